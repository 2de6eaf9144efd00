import { useEffect, useState } from 'preact/hooks'
import { acceptedTypes, asItIs, bytesOf } from '../../book/attachments.ts'
import { refuse } from '../../book/error.ts'
import type { KeptFile } from '../../book/schema.ts'
import { downloadBlob } from '../parts/download-blob.ts'
import { Said, useSaid } from './said.tsx'
import { bytes } from '../parts/wording.ts'
import { say } from '../../words/say.ts'

/** An attached photo or document: looked at here, or handed out as a file. */
export function AttachedFile({ file }: { file: KeptFile }) {
  const [shown, setShown] = useState('')
  const { said, run } = useSaid()
  const isPhoto = file.type.startsWith('image/')
  useEffect(() => () => URL.revokeObjectURL(shown), [shown])

  const read = async () => asItIs(await bytesOf(file))
  const look = () =>
    run(async () => {
      const blob = await read()
      if (!acceptedTypes.includes(blob.type))
        throw refuse(file.name, say`${file.name} is neither a photo nor a PDF inside, so it is not opened here.`)
      const url = URL.createObjectURL(blob)
      if (blob.type.startsWith('image/')) {
        setShown(url)
        return
      }
      open(url)
      setTimeout(() => URL.revokeObjectURL(url), 60_000)
    })

  return (
    <figure class="attached">
      <figcaption>
        <b>{file.name}</b>{' '}
        <span class="q">
          {bytes(file.size)}, SHA-256 <code title={file.sha256}>{file.sha256.slice(0, 16)}</code>
        </span>
      </figcaption>
      {shown && <img src={shown} alt={say`Attached photo ${file.name}`} />}
      <div class="acts">
        {!shown && (
          <button type="button" class="b low" onClick={look}>
            {isPhoto ? say`Look at it` : say`Open it`}
            <span class="vh"> {file.name}</span>
          </button>
        )}
        <button type="button" class="b low" onClick={() => run(async () => downloadBlob(file.name, await read()))}>
          {say`Export`}
          <span class="vh"> {file.name}</span>
        </button>
      </div>
      <Said said={said} />
    </figure>
  )
}
