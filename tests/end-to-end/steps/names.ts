/** What must work wherever the extension runs. Each kind of test has its own way to do it; none may leave one out. */
export type Step =
	| 'a wrong name is underlined while it is typed'
	| 'the problem is in the list of problems'
	| 'a quick fix corrects it'
	| 'resting on a load tells how it came about'
	| 'completion offers what fits'
	| 'a name changes in all files at once'
	| 'a text is laid out when it is saved'
	| 'the outline has the sessions of a block'
	| 'the preview shows the loads of the plan that runs the block'
	| 'the preview follows the keys'
	| 'after a reload everything is there again'
