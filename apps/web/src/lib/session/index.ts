export { endSession, enterSession, followSessions, leaveSession } from './session-turns.ts';
