/** What a phone shows one at a time above its bar. */
export type Drawer = 'picture' | 'clock' | 'hint';
