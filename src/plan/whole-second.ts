/**
 * A moment to the second, ISO 8601 in UTC: what is worked out for a moment holds for as long as somebody looks at it, and
 * comes to the same where it is worked out again from the record.
 */
export function wholeSecond(at: Date): string {
  return new Date(Math.floor(at.getTime() / 1000) * 1000).toISOString()
}
