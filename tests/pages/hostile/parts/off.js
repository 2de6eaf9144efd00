// Disabled as part of a group.
const group = document.createElement('fieldset')
group.disabled = true
field.parentElement.replaceWith(group)
group.append(field.labels[0] ?? '', field)
