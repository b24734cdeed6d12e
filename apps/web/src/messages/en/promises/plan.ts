/** Said while promises are still being worked out after what was booked. */
export const plan = {
  page: 'Promises are being worked out again after what was booked. Until then nobody gets anything new.',
  answer: 'Promises are being worked out again after what was booked. Look once more before you promise anything.',
};
