import { hook } from './ways-out.ts'

export interface Suspended {
  /** Gives the terminal to the shell. */
  leave(): void
  /** Takes it again, and draws all of it. */
  enter(): void
}

export interface Suspender {
  /** Windows has no such thing. */
  isPossible: boolean
  /** Stops the program until the shell takes it up again. */
  now(): void
  stop(): void
}

/** Where nobody is there to take the program up again the system does not stop it: then it goes on by itself. */
const GOES_ON_MS = 200

/** Stops the program as Ctrl-Z does, with the terminal as it was meanwhile, and goes on when it is taken up again. */
export function suspender({ leave, enter }: Suspended): Suspender {
  if (process.platform === 'win32') return { isPossible: false, now() {}, stop() {} }
  let isAway = false
  let unhook = () => {}
  let onItsOwn: NodeJS.Timeout | undefined
  const listen = () => {
    unhook = hook(process, 'SIGTSTP', () => suspend(process.pid))
  }
  /** 0 is everybody in the group, as with the key: whoever started the program stops with it. */
  const suspend = (whom: number) => {
    if (isAway) return
    isAway = true
    leave()
    // Without a listener the signal does what it is there for.
    unhook()
    onItsOwn = setTimeout(goOn, GOES_ON_MS)
    process.kill(whom, 'SIGTSTP')
  }
  const goOn = () => {
    clearTimeout(onItsOwn)
    // Stopped without being asked: the shell has set the terminal as it likes it.
    if (!isAway) leave()
    isAway = false
    unhook()
    listen()
    enter()
  }
  const unhookGoOn = hook(process, 'SIGCONT', goOn)
  listen()
  return {
    isPossible: true,
    now: () => suspend(0),
    stop() {
      clearTimeout(onItsOwn)
      unhook()
      unhookGoOn()
    },
  }
}
