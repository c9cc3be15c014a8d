import "@fontsource/ibm-plex-sans-condensed/latin-400.css";
import "@fontsource/ibm-plex-sans-condensed/latin-500.css";
import "@fontsource/ibm-plex-sans-condensed/latin-600.css";
import "./tokens.css";
import "./styles/base.css";
import "./styles/answer.css";
import "./styles/findings.css";
import "./styles/sheets.css";
import "./styles/fields.css";
import "./styles/tables.css";
import "./styles/layout.css";
// The drawing, too: the server may have drawn it into the page already.
import "./drawing/elevation.css";
import "./styles/firstPicture.css";
import "./styles/print.css";
