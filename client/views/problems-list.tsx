import type { Place, PreviewProblem } from '../../language/reports/preview.ts'
import { counted } from './counted.ts'
import { Sentence } from './sentence.tsx'
import { unlessChanged } from './unchanged.ts'
import { pageWords as words } from './words.ts'

export const problemsAnchor = 'problems'

export interface ProblemsListProps {
	readonly problems: readonly PreviewProblem[]
	/** Goes to a problem's text, where there is an editor. */
	readonly go: ((place: Place) => void) | null
	/** Whom each problem concerns, where a page is about several people. */
	readonly concerns?: readonly string[]
}

/** What is open in the text that the picture comes from, each with its line. */
export const ProblemsList = unlessChanged(function ProblemsList({ problems, go, concerns }: ProblemsListProps) {
	return (
		<section class="problems" id={problemsAnchor}>
			<h2>{words.problems}</h2>
			{problems.length === 0 ? (
				<p class="empty">{words.none}</p>
			) : (
				<ul>
					{problems.map((problem, index) => (
						<li key={`${problem.file}:${problem.line}:${problem.column}:${problem.code}`} class={problem.level}>
							<span class="level">{words.level[problem.level]}</span>
							<div>
								<p>
									<Sentence text={problem.message} />
								</p>
								<p class="aside">
									{go === null ? (
										<Where problem={problem} />
									) : (
										<button type="button" class="to-text" onClick={() => go(problem.place)}>
											<Where problem={problem} />
										</button>
									)}{' '}
									<span class="code">{problem.code}</span>
									{problem.source !== null && <bdi> · {problem.source}</bdi>}
									{concerns?.[index] !== undefined && <bdi> · {concerns[index]}</bdi>}
								</p>
							</div>
						</li>
					))}
				</ul>
			)}
		</section>
	)
})

function Where({ problem }: { problem: PreviewProblem }) {
	return (
		<bdi dir="ltr">
			{problem.file}:{problem.line}
		</bdi>
	)
}

const levels = ['error', 'warning', 'info', 'hint'] as const

/** `2 warnings, 1 note`; empty where there is none. */
export function problemsInShort(problems: readonly PreviewProblem[]): string {
	return levels
		.map(level => [level, problems.filter(problem => problem.level === level).length] as const)
		.filter(([, count]) => count > 0)
		.map(([level, count]) => counted[level](count))
		.join(', ')
}
