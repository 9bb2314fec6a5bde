export default undefined
