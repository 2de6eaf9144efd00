// Put away in a dialog that is not open.
const dialog = document.createElement('dialog')
field.parentElement.replaceWith(dialog)
dialog.append(field.labels[0] ?? '', field)
