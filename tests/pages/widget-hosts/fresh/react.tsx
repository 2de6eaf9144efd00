import 'gapsum'
import 'gapsum/react'
import { createRoot } from 'react-dom/client'

function Page() {
  return (
    <gapsum-widget
      id="w"
      units="ip"
      prefill={{ volume: 450 }}
      ongapsum-report={({ detail }) => {
        const value: number | undefined = detail.report?.figures['air-changes-50']?.value
        document.getElementById('heard')!.textContent = value?.toFixed(2) ?? ''
      }}
    />
  )
}

// @ts-expect-error: units are ip or si
export const wrong = <gapsum-widget units="metric" />

createRoot(document.getElementById('app')!).render(<Page />)
