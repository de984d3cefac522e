// The layers, for dependency-cruiser. The way of the data is one way: text → tokens → tree → model → (rules, reports) → (server, preview,
// terminal); each rule says what a folder may import, and everything else is an error.

/** What only a whole programme or its parts need to know: plain data and arithmetic. */
const knowledge = ['^language/model/', '^language/compute/']

const only = (name, from, allowed, comment) => ({
	name,
	comment,
	severity: 'error',
	from: { path: from },
	to: { pathNot: [from, ...allowed] },
})
const never = (name, from, to, comment) => ({ name, comment, severity: 'error', from, to })

const langium = '^node_modules/(langium|chevrotain|@chevrotain)/'
const fractions = '^node_modules/fraction\\.js/'

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
	forbidden: [
		only('model-stands-alone', '^language/model/', [fractions], 'The model is data; it knows nobody.'),
		only(
			'compute-is-pure',
			'^language/compute/',
			[...knowledge, fractions],
			'Arithmetic needs the model and exact numbers, nothing else.',
		),
		only(
			'rules-need-model-and-compute',
			'^language/rules/',
			[...knowledge, fractions, '^language/names/(nearest|meant)\\.ts$', '\\.md$'],
			'A rule sees the resolved programme, never text or tree; what name was meant it may ask.',
		),
		only(
			'reports-need-model-and-compute',
			'^language/reports/',
			[...knowledge, fractions],
			'A report is computed from the model.',
		),
		never(
			'langium-has-its-place',
			{ path: '^language/', pathNot: '^language/(grammar|parser|reading|names|workspace)/' },
			{ path: langium },
			'What is downstream of the model does not know how the text was read.',
		),
		never(
			'language-does-no-input-or-output',
			{ path: '^language/' },
			{ dependencyTypes: ['core'] },
			'The language runs in a browser too: no Node.',
		),
		never(
			'language-knows-nobody-who-asks',
			{ path: '^language/' },
			{ path: '^(server|client|tests|tooling)/|^node_modules/(vscode|commander|preact|echarts)' },
			'Nothing upstream knows who asks.',
		),
		never('server-knows-no-client', { path: '^server/' }, { path: '^client/' }, 'Any editor that speaks the protocol may ask.'),
		never(
			'server-features-run-anywhere',
			{ path: '^server/', pathNot: '^server/[^/]+-node\\.ts$' },
			{ dependencyTypes: ['core'] },
			'The server runs in a browser too; only the files named so know Node.',
		),
		never(
			'editor-asks-the-server',
			{ path: '^client/editor/' },
			{ path: '^(language|server)/', dependencyTypesNot: ['type-only'] },
			'The extension shows what the server says; it computes nothing.',
		),
		never(
			'preview-gets-data',
			{ path: '^client/(preview|views)/' },
			{ path: '^(language|server|client/(editor|terminal))/', dependencyTypesNot: ['type-only'] },
			'The panel gets data, never code.',
		),
		never(
			'views-serve-preview-and-terminal',
			{ path: '^client/views/' },
			{ path: '^client/preview/' },
			'A view stands by itself.',
		),
		never(
			'terminal-knows-no-editor',
			{ path: '^client/terminal/' },
			{ path: '^client/(editor|preview)/' },
			'The command line and the editor are two clients of one language.',
		),
		never(
			'no-cycles',
			{},
			{ circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
			'Files that need each other are one file, or wrongly cut.',
		),
		never(
			'no-tools-in-the-product',
			{},
			// The editor itself provides `vscode`; only its types are installed.
			{ dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], pathNot: '^node_modules/@types/vscode/' },
			'What ships is a dependency.',
		),
		never('no-dead-imports', {}, { couldNotResolve: true }, 'What is imported exists.'),
	],
	options: {
		doNotFollow: { path: '^node_modules/' },
		exclude: { path: '^language/grammar/generated/' },
		tsPreCompilationDeps: 'specify',
		tsConfig: { fileName: 'tsconfig.json' },
		enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
	},
}
