import './language.ts'
import './preview.css'
import { options, render } from 'preact'
import { connect } from './editor.ts'
import { Panel } from './panel.tsx'

// Answers may come faster than they can be drawn, while somebody types: what waits is drawn once, and nothing piles up.
options.debounceRendering = draw => requestAnimationFrame(draw)

render(<Panel editor={connect()} />, document.getElementById('preview')!)
