/** Three pages of one site. */
export default {
  define: {
    __VUE_OPTIONS_API__: 'true',
    __VUE_PROD_DEVTOOLS__: 'false',
    __VUE_PROD_HYDRATION_MISMATCH_DETAILS__: 'false',
  },
  build: { rolldownOptions: { input: ['plain.html', 'react.html', 'vue.html'] } },
}
