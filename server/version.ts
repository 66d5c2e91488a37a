/** The version of the command line and the language server: that of their package. */
export const version = '0.1.0';
