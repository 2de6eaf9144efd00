// Put away in something that is folded up.
const fold = document.createElement('details')
field.parentElement.replaceWith(fold)
fold.append(field.labels[0] ?? '', field)
