import './preview.css'
import { render } from 'preact'
import { openChannel } from './channel.ts'
import { Panel } from './panel.tsx'

render(<Panel channel={openChannel()} />, document.getElementById('preview')!)
