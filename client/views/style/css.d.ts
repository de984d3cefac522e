/** A page takes its style sheets in as text; the build and the tests load them so. */
declare module '*.css' {
	const text: string
	export default text
}
