/** What steers a terminal, or turns the direction of writing: a text from a file must not do either. */
const steering = /(?!\n)[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu

/** A text as it may be shown: tabs as two spaces, steering characters as a mark of one column. */
export function plain(text: string): string {
	return text.replaceAll('\t', '  ').replace(steering, '\u00b7')
}
