/** Imported where tests of several fans may be read: see `several-fans.ts`. */
import { fanChecks } from './checks/fans.ts'
import { readFans } from './fans.ts'
import { knowSeveralFans } from './several-fans.ts'

knowSeveralFans({ read: readFans, checks: fanChecks })
