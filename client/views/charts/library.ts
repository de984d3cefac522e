import { BarChart, LineChart } from 'echarts/charts'
import { GridComponent } from 'echarts/components'
import { use } from 'echarts/core'
import { SVGRenderer } from 'echarts/renderers'

// The parts of the chart library that the drawings use, and no other: the rest stays out of the bundle.
use([BarChart, LineChart, GridComponent, SVGRenderer])

export { type EChartsType, init } from 'echarts/core'
