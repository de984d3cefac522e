import './language.ts'
import './preview.css'
import { render } from 'preact'
import { connect } from './editor.ts'
import { Panel } from './panel.tsx'

render(<Panel editor={connect()} />, document.getElementById('preview')!)
