/** The shape of a policy for the browser's administrators, as the JSON Schema that Chromium reads. */
import * as z from 'zod/mini'
import { policySchema } from './office.ts'

type Json = { [name: string]: unknown }

/**
 * The policy as Chromium's managed storage knows schemas: each has one type, and no alternatives. Those of a union are
 * put together in one object: what does not go together is found when the policy is read.
 * Source: https://www.chromium.org/administrators/configuring-policy-for-extensions/
 */
export function officeSchema(): Json {
  const { properties } = plain(z.toJSONSchema(policySchema) as Json)
  return { $schema: 'http://json-schema.org/draft-03/schema#', type: 'object', properties }
}

function plain(schema: Json): Json {
  const choices = (schema['anyOf'] ?? schema['oneOf']) as Json[] | undefined
  if (choices) return choices.map(plain).reduce(together)
  if ('const' in schema) return { type: 'string', enum: [schema['const']] }
  const { type } = schema
  if (Array.isArray(schema['enum'])) return { type: 'string', enum: schema['enum'] }
  if (type === 'array') return { type, items: plain(schema['items'] as Json) }
  if (type !== 'object') return { type }
  if (schema['properties'] === undefined) return { type, additionalProperties: { type: 'string' } }
  const properties = Object.entries(schema['properties'] as Record<string, Json>)
  return { type, properties: Object.fromEntries(properties.map(([name, one]) => [name, plain(one)])) }
}

function together(a: Json, b: Json): Json {
  if (a['properties'] && b['properties']) {
    const all: Record<string, Json> = { ...(a['properties'] as Record<string, Json>) }
    for (const [name, one] of Object.entries(b['properties'] as Record<string, Json>))
      all[name] = all[name] ? together(all[name], one) : one
    return { type: 'object', properties: all }
  }
  if (a['enum'] && b['enum']) return { ...a, enum: [...new Set([...(a['enum'] as []), ...(b['enum'] as [])])] }
  return a
}
