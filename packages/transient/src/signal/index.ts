/** Which signals can be made, such as a sine or a burst? */
export {};
