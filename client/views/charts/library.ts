import { BarChart, LineChart } from 'echarts/charts'
import { GridComponent } from 'echarts/components'
import { setPlatformAPI, use } from 'echarts/core'
import { SVGRenderer } from 'echarts/renderers'

// The parts of the chart library that the drawings use, and no other: the rest stays out of the bundle.
use([BarChart, LineChart, GridComponent, SVGRenderer])

// Without a canvas the library measures text by its own table, in the panel as in pages. With one it takes a line's height from a Chinese
// character, and where no font has that, numbers stand in the bars.
setPlatformAPI({ createCanvas: () => null as unknown as HTMLCanvasElement })

export { type EChartsType, init } from 'echarts/core'
