import type { Result } from '../../../src/cli/result.ts'

/** The code of a refusal, or what a scan was answered with where that says no. */
export function refusedOr(
  result: Result,
  said: (scanned: { kind: string; verdict: string; container: number }) => string | null,
): string | null {
  if (!result.ok) return result.code
  const { answer } = result
  if (typeof answer !== 'object' || answer === null || !('kind' in answer)) return null
  const verdict =
    'verdict' in answer && typeof answer.verdict === 'object' && answer.verdict !== null ? answer.verdict : {}
  const no = said({
    kind: String(answer.kind),
    verdict: 'kind' in verdict ? String(verdict.kind) : '',
    container: 'container' in answer ? Number(answer.container) : 0,
  })
  return no === null ? null : `scanned: ${no}`
}
