/** The words of a command in a file, with those in double quotes kept together, as a shell would. */
export function splitWords(line: string): string[] {
  const words: string[] = []
  for (const [, quoted, bare] of line.matchAll(/"([^"]*)"|(\S+)/g)) words.push(quoted ?? bare ?? '')
  return words
}
