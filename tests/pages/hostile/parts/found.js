// Shown only to who searches the page.
field.parentElement.hidden = 'until-found'
