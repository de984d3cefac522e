/** The build takes the built-in library and the rules' pages in as text, so that nothing reads files at run time. */
declare module '*.stave' {
	const text: string
	export default text
}
declare module '*.md' {
	const text: string
	export default text
}
