import type { ComponentChildren } from 'preact'
import { useContext } from 'preact/hooks'
import type { BlockAsks, BlockGate } from '../../../language/reports/block-asks.ts'
import { ReaderContext } from '../reader/context.ts'
import { spokenName } from '../reader/words.ts'
import { blockWords as words } from './words.ts'

/** What a lifter must bring to a block, and what it is for. */
export function BlockAsksView({ asks }: { asks: BlockAsks }) {
	const { targets, answers, gates, bests, bodyweight, equipment } = asks
	const isNothing = gates.length + bests.length + equipment.length === 0 && !bodyweight
	return (
		<section class="asks" id="asks">
			<h2>{words.asks}</h2>
			<dl>
				{targets.length > 0 && (
					<Fact name={words.targets}>
						<Titles titles={targets} />
					</Fact>
				)}
				{answers.length > 0 && (
					<Fact name={words.answers}>
						<Titles titles={answers} />
					</Fact>
				)}
				{gates.length > 0 && (
					<Fact name={words.gates}>
						<ul>
							{gates.map(gate => (
								<Gate key={gate.text} gate={gate} />
							))}
						</ul>
					</Fact>
				)}
				{bests.length > 0 && (
					<Fact name={words.bests}>
						<ul>
							{bests.map(({ movement, title, loads, base }) => (
								<li key={movement}>
									<bdi>{title}</bdi>{' '}
									<span class="aside">
										{(loads.length > 1 || loads[0] !== title) && <bdi>{words.bestFor(loads.join(', '))}</bdi>}
										{base && <> {words.base}</>}
									</span>
								</li>
							))}
						</ul>
					</Fact>
				)}
				{bodyweight && <Fact name={words.bodyweight}>{words.bodyweightFor}</Fact>}
				{equipment.length > 0 && (
					<Fact name={words.equipment}>
						<ul>
							{equipment.map(({ name, movements }) => (
								<li key={name}>
									<bdi>{spokenName(name)}</bdi> <span class="aside">{words.equipmentFor(movements.join(', '))}</span>
								</li>
							))}
						</ul>
					</Fact>
				)}
			</dl>
			{isNothing && <p class="empty">{words.nothing}</p>}
		</section>
	)
}

function Fact({ name, children }: { name: string; children: ComponentChildren }) {
	return (
		<div>
			<dt>{name}</dt>
			<dd>{children}</dd>
		</div>
	)
}

function Titles({ titles }: { titles: readonly string[] }) {
	return (
		<ul>
			{titles.map(title => (
				<li key={title} dir="auto">
					{title}
				</li>
			))}
		</ul>
	)
}

function Gate({ gate: { text, before, week, reachedIn, source } }: { gate: BlockGate }) {
	const reader = useContext(ReaderContext)
	const when = before.length > 0 ? words.gateBefore(before.join(', '), reader.number(week)) : words.gateOfBlock
	return (
		<li>
			<bdi>{text}</bdi>{' '}
			<span class="aside">
				<bdi>{when}</bdi>
				{reachedIn !== null && `; ${words.gateReached(reader.number(reachedIn))}`}
				{source !== null && <bdi> ({source})</bdi>}
			</span>
		</li>
	)
}
