import { defineContentScript } from 'wxt/utils/define-content-script'

export default defineContentScript({
  registration: 'runtime',
  cssInjectionMode: 'manual',
  main() {},
})
