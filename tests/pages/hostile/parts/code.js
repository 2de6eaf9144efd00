// For a code that was sent to a telephone.
field.autocomplete = 'one-time-code'
