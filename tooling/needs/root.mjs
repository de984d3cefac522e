import path from 'node:path'

/** The folder of the repository. */
export const root = path.resolve(import.meta.dirname, '../..')
