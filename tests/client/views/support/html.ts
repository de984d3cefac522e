import { render } from 'preact-render-to-string'

type Element = Parameters<typeof render>[0]

/** What a person reads in a view, with its markup taken out and white space made plain. */
export function textOf(element: Element): string {
	return plainText(render(element))
}

export function plainText(html: string): string {
	return html
		.replace(/<style\b[\s\S]*?<\/style>/g, '')
		.replace(/<\/?(tr|td|th|li|p|h\d|caption)\b[^>]*>/g, ' ')
		.replace(/<[^>]*>/g, '')
		.replaceAll('&lt;', '<')
		.replaceAll('&gt;', '>')
		.replaceAll('&quot;', '"')
		.replaceAll('&amp;', '&')
		.replace(/[\s\u00a0]+/g, ' ')
		.trim()
}
