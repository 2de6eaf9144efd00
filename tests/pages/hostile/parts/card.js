// For the number of a card, with a section and a place before it.
field.setAttribute('autocomplete', 'section-x billing CC-CSC')
