/** What stands between commas, plus signs and the like, one for each pass. A comma between two digits is a decimal comma, `+/-` a tolerance. */
export function partsOf(text: string): string[] {
  return text
    .split(/;|,(?!\d)|(?<!\d),|\+(?! ?\/ ?-)|\bthen\b|\band\b/iu)
    .map((part) => part.trim())
    .filter((part) => part !== '')
}
