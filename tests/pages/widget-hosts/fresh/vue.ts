import 'gapsum'
import 'gapsum/vue'
import type { Outcome } from 'gapsum'
import { createApp, type GlobalComponents, h } from 'vue'

type Props = InstanceType<GlobalComponents['gapsum-widget']>['$props']
const props: Props = { units: 'ip', prefill: { volume: 450 } }
// @ts-expect-error: units are ip or si
export const wrong: Props = { units: 'metric' }

const heard = ({ detail }: CustomEvent<Outcome>) => {
  document.getElementById('heard')!.textContent = detail.report?.figures['air-changes-50']?.value.toFixed(2) ?? ''
}

createApp({ render: () => h('gapsum-widget', { id: 'w', ...props, 'onGapsum-report': heard }) }).mount('#app')
