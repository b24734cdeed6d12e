/** Said while promises are still being worked out after what was booked. */
export const plan = {
  page: 'Promises are being worked out again after the last entry. No new plants are promised until that’s done.',
  answer: 'Promises are being worked out again after the last entry. Check again before you promise anything.',
};
