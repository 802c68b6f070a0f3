/** The version that results name as their origin: that of `package.json`. */
export const version = '0.1.0';
