export const DIALOG = 'step-clock';
