import { defineUnlistedScript } from 'wxt/utils/define-unlisted-script'
import { offerExtra } from '../lib/form/kinds/write-extra.ts'

export default defineUnlistedScript({ main: offerExtra })
