/** Whether bytes arrived; where they did not, a code of the system or of ours, and whether some of them may have. */
export type Sent =
  | { ok: true; where: string }
  | {
      ok: false
      /** `exists`, `no-device`, `no-answer`, or what the system says, such as `ENOSPC`. */
      code: string
      where: string
      /** A printer that got the beginning may have printed some. */
      partly: boolean
    }

/** The system's name for an error. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : 'EIO'
}
