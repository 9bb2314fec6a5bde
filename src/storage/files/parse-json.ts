/**
 * JSON, of bytes in UTF-8, without a key `__proto__`, which would change an object's nature as soon as it is copied. Throws
 * SyntaxError. Only a text that may have such a key is looked through: that takes ten times as long as reading it.
 */
export function parseJson(json: string | Buffer): unknown {
  const text = json.toString()
  const value: unknown = JSON.parse(text)
  if (/__proto__|\\u005f/i.test(text) && hasProtoKey(value)) throw new SyntaxError('a key __proto__')
  return value
}

function hasProtoKey(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false
  return Object.hasOwn(value, '__proto__') || Object.values(value).some(hasProtoKey)
}
