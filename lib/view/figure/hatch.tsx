/** The hatching of the side beyond a limit. Each drawing has its own, so that it also works alone and in a shadow root. */
export function Hatch({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={id} width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path d="M0 0v4" class="ht" />
      </pattern>
    </defs>
  )
}
