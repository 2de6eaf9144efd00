import { useEffect, useState } from 'preact/hooks'
import { getSettings } from '../../book/settings.ts'
import { later } from '../calculator/later.tsx'
import { Icon } from '../parts/icons.tsx'
import { useTold } from '../parts/use-told.ts'
import { afterList } from './after-list.ts'
import { ChainStatus } from './chain-status.tsx'
import { EntriesSection } from './entries-section.tsx'
import { Reminders } from './reminders.tsx'
import { hashOf, sections, type Route } from './route.ts'
import { useLive } from '../parts/use-live.ts'
import { useRoute } from './use-route.ts'
import { say } from '../../words/say.ts'

// The entries come first; what is asked for less often is read when it is.
const DevicesSection = later(async () => (await import('./devices-section.tsx')).DevicesSection)
const JobsSection = later(async () => (await import('./jobs-section.tsx')).JobsSection)
const LimitsSection = later(async () => (await import('./limits-section.tsx')).LimitsSection)
const MapsSection = later(async () => (await import('./maps-section.tsx')).MapsSection)
const ReviewSection = later(async () => (await import('./review-section.tsx')).ReviewSection)
const SettingsSection = later(async () => (await import('./settings-section.tsx')).SettingsSection)
const GivenBack = later(async () => (await import('../parts/given-back.tsx')).GivenBack)
const ReportPlace = later(async () => (await import('./report-place.tsx')).ReportPlace)

const words: Record<Route['section'], string> = {
  jobs: say`Jobs`,
  entries: say`Entries`,
  maps: say`Form maps`,
  devices: say`Devices`,
  limits: say`Limits`,
  review: say`Review`,
  settings: say`Settings`,
  report: say`Report`,
}

export function Book() {
  const [route, go] = useRoute()
  useTheme()
  const told = useTold()
  const [late, setLate] = useState(false)
  useEffect(() => {
    const timer = setTimeout(() => setLate(true), afterList)
    return () => clearTimeout(timer)
  }, [])
  useEffect(() => {
    document.title = say`${words[route.section]}: Gapsum book`
  }, [route.section])

  return (
    <div class="wrap">
      <header class="top">
        <h1>
          <Icon name="mark" />
          {say`Book`}
        </h1>
        <nav aria-label={say`Book`}>
          {sections.map((section) => (
            <a
              key={section}
              href={hashOf({ section })}
              {...(section === route.section && { 'aria-current': 'page' as const })}
            >
              {words[section]}
            </a>
          ))}
        </nav>
        <ChainStatus />
      </header>
      {told && <GivenBack told={told} />}
      <main aria-label={words[route.section]}>
        <Section route={route} go={go} />
      </main>
      {/* They come late: below the section, so that nothing moves away from under the pointer. */}
      {late && <Reminders />}
    </div>
  )
}

function Section({ route, go }: { route: Route; go: (route: Route) => void }) {
  switch (route.section) {
    case 'jobs':
      return <JobsSection />
    case 'entries':
      return <EntriesSection route={route} go={go} />
    case 'maps':
      return <MapsSection open={route.map} go={go} />
    case 'devices':
      return <DevicesSection />
    case 'limits':
      return <LimitsSection />
    case 'review':
      return <ReviewSection />
    case 'settings':
      return <SettingsSection />
    case 'report':
      return <ReportPlace key={`${route.job ?? ''} ${route.of ?? ''}`} route={route} />
  }
}

function useTheme() {
  const settings = useLive(getSettings, ['settings'])
  const theme = settings.value?.theme
  useEffect(() => {
    if (theme === undefined) return
    if (theme === 'system') delete document.documentElement.dataset.theme
    else document.documentElement.dataset.theme = theme
  }, [theme])
}
