import { render, Text } from 'ink'

/** The least that Ink can draw: the peer of the first frame. */
render(<Text>ready</Text>)
setInterval(() => {}, 1000)
