/** A page's text, put into the bundle as it is. */
declare module '*.md?raw' {
  const text: string;
  export default text;
}
