import { isUtf8 } from 'node:buffer'

/** The bytes of a file as text. */
export interface FileText {
	/** Without the byte-order mark: it belongs to the file, not to its text, and shifts no column. */
	readonly text: string
	readonly byteOrderMark: boolean
	/** What keeps the bytes from being text, and the offset in `text` from which on they are none. */
	readonly fault: { readonly offset: number; readonly message: string } | undefined
}

export const byteOrderMark = '\ufeff'

/**
 * Reads UTF-8. Bytes that are none are replaced one by one, so that the names which the rest of the file gives are still known and no
 * other file is blamed.
 */
export function decode(bytes: Uint8Array): FileText {
	const whole = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)
	const marked = whole.startsWith(byteOrderMark)
	const text = marked ? whole.slice(1) : whole
	if (isUtf8(bytes)) return { text, byteOrderMark: marked, fault: undefined }
	return { text, byteOrderMark: marked, fault: faultOf(bytes, marked) }
}

function faultOf(bytes: Uint8Array, marked: boolean): FileText['fault'] {
	const [first, second] = bytes
	if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
		return { offset: 0, message: 'This file is saved as UTF-16, not as UTF-8. Open it in an editor and save it again as UTF-8.' }
	}
	const message =
		'From here on this file is not UTF-8 text: it was saved in another encoding, or it is no text at all. Open it in an editor and save it again as UTF-8.'
	return { offset: readableStart(bytes).length - (marked ? 1 : 0), message }
}

/** The longest beginning of the bytes that is text. */
function readableStart(bytes: Uint8Array): string {
	const decodeStart = (length: number) =>
		// Streaming: a character that the cut takes apart is no fault.
		new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes.subarray(0, length), { stream: true })
	let readable = 0
	let unreadable = bytes.length + 1
	while (unreadable - readable > 1) {
		const middle = (readable + unreadable) >> 1
		try {
			decodeStart(middle)
			readable = middle
		} catch {
			unreadable = middle
		}
	}
	return decodeStart(readable)
}
