import type { FileRequest } from '../outputs/write-file.ts'

/** Makes a file of a picture. What it needs is loaded when the first file is asked for: it is larger than all else together. */
export type FileWriter = (request: FileRequest) => Promise<Uint8Array>

/** The script of all writers, in the built extension. */
export const writersScript = 'outputs.js'
