/** The shelf as a folder: what is in it, and new segments into it. Nothing that is there is changed or deleted. */
import { readSegmentName } from './segment.ts'
import type { ShelfFile } from './take-in.ts'
import type { ShelfPart } from './write.ts'

interface Asks {
  queryPermission?: (how: { mode: 'readwrite' }) => Promise<PermissionState>
  requestPermission?: (how: { mode: 'readwrite' }) => Promise<PermissionState>
}
type Picker = { showDirectoryPicker?: (options: object) => Promise<FileSystemDirectoryHandle> }

/** Whether the browser lets a page keep a folder. Those that do not read one that is chosen each time. */
export const keepsFolders = (): boolean => 'showDirectoryPicker' in globalThis

/**
 * Lets the person choose a folder; nothing where they chose none.
 * @throws DOMException when the browser cannot show the choice or use the folder
 */
export const pickFolder = (): Promise<FileSystemDirectoryHandle | undefined> =>
  (globalThis as Picker).showDirectoryPicker!({ id: 'shelf', mode: 'readwrite' }).catch((error: unknown) => {
    if (error instanceof DOMException && error.name === 'AbortError') return undefined
    throw error
  })

/** Whether the folder may be used. To be called while a press is answered: the browser may ask the person. */
export async function mayUse(folder: FileSystemDirectoryHandle & Asks): Promise<boolean> {
  const mode = { mode: 'readwrite' } as const
  if (!folder.queryPermission || (await folder.queryPermission(mode)) === 'granted') return true
  return (await folder.requestPermission?.(mode)) === 'granted'
}

/** Whether a file stands there that was begun and never written: a page that ends meanwhile leaves it. */
const isEmpty = (file: FileSystemFileHandle): Promise<boolean> =>
  file.getFile().then(
    ({ size }) => size === 0,
    // One that cannot be opened now is there all the same.
    () => false,
  )

/** The segments in the folder and in the folders in it, without those that are empty. */
export async function filesOf(folder: FileSystemDirectoryHandle, deeper = true): Promise<ShelfFile[]> {
  const files: ShelfFile[] = []
  for await (const [name, one] of folder.entries()) {
    if (one.kind === 'file') {
      if (readSegmentName(name) && !(await isEmpty(one))) files.push({ name, open: () => one.getFile() })
    } else if (deeper) files.push(...(await filesOf(one, false)))
  }
  return files
}

/** Writes a segment into its book's own folder. The browser puts it there whole, or not at all. */
export async function writeInto(folder: FileSystemDirectoryHandle, { book, name, parts }: ShelfPart): Promise<void> {
  const own = await folder.getDirectoryHandle(book, { create: true })
  const file = await (await own.getFileHandle(name, { create: true })).createWritable()
  try {
    for await (const part of parts()) await file.write(part)
    await file.close()
  } catch (error) {
    await file.abort().catch(() => undefined)
    await own.removeEntry(name).catch(() => undefined)
    throw error
  }
}
