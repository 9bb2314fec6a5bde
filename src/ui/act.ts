import type { Errand } from '../lines/errand.ts'
import type { NewJob } from '../session/jobs.ts'
import type { Session } from '../session/session.ts'
import type { Screen, ScreenName } from './navigation.ts'

export type Command = Parameters<Session['send']>[0]

/** What a key, a choice or a line asks for. */
export type Act =
  /**
   * Commands one after the other, until one is refused; then perhaps to another screen, or with `isTurn` to it in place
   * of the one that asked.
   */
  | { do: 'send'; commands: readonly Command[]; to?: Screen | undefined; isTurn?: boolean | undefined }
  /** Lines one after the other, as if each had been typed. */
  | { do: 'lines'; lines: readonly string[] }
  /** Something that takes its time: what came of it is said when it is done. */
  | { do: 'errand'; errand: Errand }
  | { do: 'go'; to: Screen }
  | { do: 'turn'; to: Screen }
  | { do: 'back'; past?: ScreenName | undefined }
  /**
   * Words are put into the line, to be completed there; `asks` says with what. `past`: where one was before all screens
   * of that name, if that screen takes them.
   */
  | {
      do: 'write'
      before: string
      after?: string | undefined
      asks?: string | undefined
      past?: ScreenName | undefined
    }
  /** A container is taken in hand: what comes off goes into it. */
  | { do: 'take'; container: number }
  /** Large letters, and small again. */
  | { do: 'large' }
  /** From now on the bell rings, or no more; the other way round where nothing is said. */
  | { do: 'sound'; on?: boolean | undefined }
  /** Says something and does nothing. */
  | { do: 'say'; what: string; cure?: string | undefined }
  | { do: 'open-job'; path: string; to?: Screen | undefined }
  | { do: 'new-job'; job: NewJob }
  | { do: 'demo' }
  | { do: 'practice' }
  /** The end: with a note for the card when work is under way. An errand that is out is waited for, or left. */
  | { do: 'leave'; note: string | null; errand?: 'wait' | 'drop' | undefined }

/** Whether an act writes into the record; leaving does, once its note is asked for and nothing is out. */
export function records(act: Act): boolean {
  return (
    act.do === 'send' ||
    act.do === 'lines' ||
    (act.do === 'leave' && act.note !== null && act.errand === undefined)
  )
}
