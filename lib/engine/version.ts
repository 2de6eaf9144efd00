import { version } from '../../package.json'

/** Version of the engine, kept with every entry of the book. */
export const ENGINE_VERSION: string = version
