/** The look, in the order in which it must be read. Imported once, by the entry of the app. */
import './tokens.css';
import './themes.css';
import './base.css';
