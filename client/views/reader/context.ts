import { createContext } from 'preact'
import { type Reader, readerOf } from './reader.ts'

/** Who looks at the page: every view writes its numbers and dates through it. */
export const ReaderContext = createContext<Reader>(readerOf(null))
