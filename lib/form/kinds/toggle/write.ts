/** A switch or a button that stays pressed takes a click like a box to tick. */
export { writeCheckbox as writeToggle } from '../checkbox/write.ts'
