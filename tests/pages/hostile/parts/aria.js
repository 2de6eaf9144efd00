// Disabled for those who cannot see.
field.setAttribute('aria-disabled', 'true')
