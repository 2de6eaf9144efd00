// The browser skips what is in there.
field.parentElement.style.contentVisibility = 'hidden'
