interface Window {
  /** What the page itself holds, apart from what its controls show. */
  pageState: () => unknown
}
declare module '*.svelte' {
  const component: import('svelte').Component<Record<string, never>>
  export default component
}
declare module '*.css'
declare module 'inputmask'
declare module 'select2'
declare module 'jquery'
declare module 'slim-select/styles'
declare module '@yaireo/tagify'
// Where a library is not installed, its page is not checked, and cannot be built.
declare module '@base-ui/react/*'
declare module '@fluentui/web-components/*'
declare module '@internationalized/*'
declare module '@material/web/*'
declare module '@ui5/webcomponents/*'
declare module 'mdui/*'
declare module 'react-select*'
declare module 'vuetify/*'
declare module 'autonumeric*'
declare module 'flatpickr*'
declare module 'quasar*'
declare module 'react-aria-components*'
declare module 'slim-select*'
declare module 'tom-select*'
