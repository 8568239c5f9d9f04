<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context>
    <name>caution</name>
    <message>
        <source>Driers and solvents: keep them off the skin and work with fresh air. Rags with oil, ink or drier on them can heat up and catch fire by themselves within hours: put them in a lidded metal bin, in water, or flat to dry, as local rules say. The safety data sheet of each product and the rules where you work come before anything said here.</source>
        <translation>Sikkative und Lösemittel: von der Haut fernhalten und lüften. Lappen mit Öl, Farbe oder Sikkativ können sich binnen Stunden von selbst erhitzen und entzünden: in einen Metallbehälter mit Deckel, in Wasser oder flach ausgebreitet trocknen, wie es örtliche Vorschriften sagen. Das Sicherheitsdatenblatt jedes Mittels und die Vorschriften am Arbeitsplatz gehen allem vor, was hier steht.</translation>
    </message>
</context>
<context>
    <name>choice</name>
    <message>
        <source>wet</source>
        <translation>nass</translation>
    </message>
    <message>
        <source>tacky</source>
        <translation>klebrig</translation>
    </message>
    <message>
        <source>dry</source>
        <translation>trocken</translation>
    </message>
    <message>
        <source>turned</source>
        <translation>verfärbt</translation>
    </message>
    <message>
        <source>returning</source>
        <translation>kehrt zurück</translation>
    </message>
    <message>
        <source>true</source>
        <translation>stimmt</translation>
    </message>
    <message>
        <source>hang</source>
        <translation>aufgehängt</translation>
    </message>
    <message>
        <source>store</source>
        <translation>eingelagert</translation>
    </message>
    <message>
        <source>consign</source>
        <translation>in Kommission</translation>
    </message>
    <message>
        <source>lend</source>
        <translation>verliehen</translation>
    </message>
    <message>
        <source>sell</source>
        <translation>verkauft</translation>
    </message>
    <message>
        <source>give</source>
        <translation>verschenkt</translation>
    </message>
    <message>
        <source>return</source>
        <translation>zurückgegeben</translation>
    </message>
    <message>
        <source>destroy</source>
        <translation>vernichtet</translation>
    </message>
    <message>
        <source>other</source>
        <translation>anderes</translation>
    </message>
    <message>
        <source>consignment</source>
        <translation>Kommission</translation>
    </message>
    <message>
        <source>sale</source>
        <translation>Verkauf</translation>
    </message>
    <message>
        <source>loan</source>
        <translation>Leihgabe</translation>
    </message>
    <message>
        <source>gift</source>
        <translation>Schenkung</translation>
    </message>
    <message>
        <source>sunny</source>
        <translation>sonnig</translation>
    </message>
    <message>
        <source>broken</source>
        <translation>wechselnd bewölkt</translation>
    </message>
    <message>
        <source>overcast</source>
        <translation>bedeckt</translation>
    </message>
</context>
<context>
    <name>conversation</name>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>, in %1</source>
        <translation>, in %1</translation>
    </message>
    <message>
        <source>the questions were not answered to the end</source>
        <translation>die Fragen wurden nicht bis zum Ende beantwortet</translation>
    </message>
    <message>
        <source>Nothing was recorded.</source>
        <translation>Nichts wurde verzeichnet.</translation>
    </message>
    <message>
        <source>That is not UTF-8 text.</source>
        <translation>Das ist kein Text in UTF-8.</translation>
    </message>
    <message>
        <source>… and %1 more: ? shows them all</source>
        <translation>… und %1 weitere: ? zeigt alle</translation>
    </message>
    <message>
        <source>That is %1.</source>
        <translation>Das ist %1.</translation>
    </message>
    <message>
        <source>Enter it all the same</source>
        <translation>Trotzdem eintragen</translation>
    </message>
    <message>
        <source>This needs an answer; ? says more.</source>
        <translation>Das braucht eine Antwort; ? sagt mehr.</translation>
    </message>
    <message>
        <source>Y/n</source>
        <translation>J/n</translation>
    </message>
    <message>
        <source>y/N</source>
        <translation>j/N</translation>
    </message>
    <message>
        <source>y</source>
        <translation>j</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>n</source>
        <translation>n</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>Type y for yes or n for no.</source>
        <translation>J für ja oder n für nein eingeben.</translation>
    </message>
    <message>
        <source>Enter takes what stands in brackets, ? says more, Ctrl-C records nothing.</source>
        <translation>Die Eingabetaste nimmt, was in Klammern steht, ? sagt mehr, Strg-C verzeichnet nichts.</translation>
    </message>
    <message>
        <source>The same without questions: %1</source>
        <translation>Dasselbe ohne Fragen: %1</translation>
    </message>
    <message>
        <source>Another, or Enter where there is none</source>
        <translation>Noch etwas, oder die Eingabetaste, wenn nicht</translation>
    </message>
    <message>
        <source>Which answer shall be changed, by its number</source>
        <translation>Welche Antwort soll geändert werden, nach ihrer Nummer</translation>
    </message>
    <message>
        <source>Enter alone changes nothing; the word drop gives this entry up: it is not recorded.</source>
        <translation>Die Eingabetaste allein ändert nichts; das Wort drop gibt diesen Eintrag auf: er wird nicht verzeichnet.</translation>
    </message>
    <message>
        <source>Is that right</source>
        <translation>Stimmt das</translation>
    </message>
    <message>
        <source>This cannot be recorded:</source>
        <translation>Das kann so nicht verzeichnet werden:</translation>
    </message>
</context>
<context>
    <name>day</name>
    <message>
        <source>Record 1 entry</source>
        <translation>1 Eintrag verzeichnen</translation>
    </message>
    <message>
        <source>Record %1 entries</source>
        <translation>%1 Einträge verzeichnen</translation>
    </message>
    <message>
        <source>Recorded 1 entry in %1.</source>
        <translation>1 Eintrag in %1 verzeichnet.</translation>
    </message>
    <message>
        <source>Recorded %1 entries in %2.</source>
        <translation>%1 Einträge in %2 verzeichnet.</translation>
    </message>
    <message>
        <source>That entry was left out; none is kept so far. Ctrl-C again leaves the day.</source>
        <translation>Dieser Eintrag fiel weg; bisher ist keiner aufgehoben. Noch einmal Strg-C verlässt den Tag.</translation>
    </message>
    <message>
        <source>That entry was left out; 1 is kept so far. Ctrl-C again leaves the day; the draft is kept.</source>
        <translation>Dieser Eintrag fiel weg; bisher ist 1 aufgehoben. Noch einmal Strg-C verlässt den Tag; der Entwurf bleibt.</translation>
    </message>
    <message>
        <source>That entry was left out; %1 are kept so far. Ctrl-C again leaves the day; the draft is kept.</source>
        <translation>Dieser Eintrag fiel weg; bisher sind %1 aufgehoben. Noch einmal Strg-C verlässt den Tag; der Entwurf bleibt.</translation>
    </message>
    <message>
        <source>Enter takes what stands in brackets, ? says more. Ctrl-C leaves out the entry that is being told. Nothing is recorded before the end.</source>
        <translation>Die Eingabetaste nimmt, was in Klammern steht, ? sagt mehr. Strg-C lässt den Eintrag weg, der gerade erzählt wird. Vor dem Ende wird nichts verzeichnet.</translation>
    </message>
    <message>
        <source>Not recorded yet, from an earlier conversation:</source>
        <translation>Noch nicht verzeichnet, aus einem früheren Gespräch:</translation>
    </message>
    <message>
        <source>Go on with them</source>
        <translation>Damit weitermachen</translation>
    </message>
    <message>
        <source>Throw them away</source>
        <translation>Wegwerfen</translation>
    </message>
    <message>
        <source>What happened</source>
        <translation>Was geschah</translation>
    </message>
    <message>
        <source>What else happened, or Enter where that is all</source>
        <translation>Was geschah noch, oder die Eingabetaste, wenn das alles ist</translation>
    </message>
    <message>
        <source>One of the verbs below. The word drop takes back the entry told last; Enter alone ends the day.</source>
        <translation>Eines der Verben unten. Das Wort drop nimmt den zuletzt erzählten Eintrag zurück; die Eingabetaste allein beendet den Tag.</translation>
    </message>
    <message>
        <source>What was told before is kept: %1. rackbook day goes on with it.</source>
        <translation>Was vorher erzählt wurde, ist aufgehoben: %1. rackbook day macht damit weiter.</translation>
    </message>
    <message>
        <source>There is none to take back.</source>
        <translation>Es gibt keinen, der zurückzunehmen wäre.</translation>
    </message>
    <message>
        <source>Taken back: %1</source>
        <translation>Zurückgenommen: %1</translation>
    </message>
    <message>
        <source>That entry was given up.</source>
        <translation>Dieser Eintrag wurde aufgegeben.</translation>
    </message>
    <message>
        <source>Nothing was recorded.</source>
        <translation>Nichts wurde verzeichnet.</translation>
    </message>
    <message>
        <source>Tried only: nothing was recorded.</source>
        <translation>Nur versucht: nichts wurde verzeichnet.</translation>
    </message>
    <message>
        <source>Nothing was recorded; rackbook day offers it again.</source>
        <translation>Nichts wurde verzeichnet; rackbook day bietet es wieder an.</translation>
    </message>
    <message>
        <source>What was told in an earlier conversation is in the book.</source>
        <translation>Was in einem früheren Gespräch erzählt wurde, steht im Buch.</translation>
    </message>
</context>
<context>
    <name>group</name>
    <message>
        <source>The program</source>
        <translation>Das Programm</translation>
    </message>
    <message>
        <source>At the press</source>
        <translation>An der Presse</translation>
    </message>
    <message>
        <source>Record files</source>
        <translation>Dateien</translation>
    </message>
    <message>
        <source>Questions</source>
        <translation>Fragen</translation>
    </message>
    <message>
        <source>The book</source>
        <translation>Das Buch</translation>
    </message>
    <message>
        <source>Sheets</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>For the archive</source>
        <translation>Für das Archiv</translation>
    </message>
</context>
<context>
    <name>help</name>
    <message>
        <source>Usage:</source>
        <translation>Aufruf:</translation>
    </message>
    <message>
        <source>Arguments</source>
        <translation>Argumente</translation>
    </message>
    <message>
        <source>Options</source>
        <translation>Optionen</translation>
    </message>
    <message>
        <source>Caution</source>
        <translation>Vorsicht</translation>
    </message>
    <message>
        <source>Examples</source>
        <translation>Beispiele</translation>
    </message>
    <message>
        <source>VERB</source>
        <translation>VERB</translation>
    </message>
    <message>
        <source>[arguments]</source>
        <translation>[Argumente]</translation>
    </message>
    <message>
        <source>[options]</source>
        <translation>[Optionen]</translation>
    </message>
    <message>
        <source>Rackbook %1 keeps a relief printmaker&apos;s records and makes sheets from them.</source>
        <translation>Rackbook %1 führt das Buch einer Hochdruckwerkstatt und macht Blätter daraus.</translation>
    </message>
    <message>
        <source>Exit status</source>
        <translation>Rückgabewert</translation>
    </message>
    <message>
        <source>&quot;rackbook VERB --help&quot; says more about a verb. The book is the one that --book names, else the environment variable RACKBOOK_BOOK, else studio.rackbook in the current folder.</source>
        <translation>„rackbook VERB --help“ sagt mehr über ein Verb. Das Buch ist das, welches --book nennt, sonst die Umgebungsvariable RACKBOOK_BOOK, sonst studio.rackbook im aktuellen Ordner.</translation>
    </message>
    <message>
        <source>Run on a terminal, it asks for what is missing.</source>
        <translation>In einem Terminal fragt es nach dem, was fehlt.</translation>
    </message>
    <message>
        <source>Success.</source>
        <translation>Erfolg.</translation>
    </message>
    <message>
        <source>The work was done and there are findings.</source>
        <translation>Die Arbeit ist getan, und es gibt Befunde.</translation>
    </message>
    <message>
        <source>The command line asks for something that cannot be.</source>
        <translation>Die Befehlszeile verlangt etwas, das nicht sein kann.</translation>
    </message>
    <message>
        <source>Input, storage or the making of a sheet failed.</source>
        <translation>Eingabe, Speicher oder das Machen eines Blatts ist gescheitert.</translation>
    </message>
</context>
<context>
    <name>mistake</name>
    <message>
        <source>%1 cannot be</source>
        <translation>%1 kann nicht sein</translation>
    </message>
    <message>
        <source>It is 0 or more.</source>
        <translation>Es ist 0 oder mehr.</translation>
    </message>
    <message>
        <source>It lies between %1 and %2; leave it out where it was not measured.</source>
        <translation>Es liegt zwischen %1 und %2; wenn es nicht gemessen wurde, weglassen.</translation>
    </message>
    <message>
        <source>a mass of 0 g is no weighing</source>
        <translation>eine Masse von 0 g ist keine Wägung</translation>
    </message>
    <message>
        <source>Give what was weighed, or the word unknown.</source>
        <translation>Angeben, was gewogen wurde, oder das Wort unknown.</translation>
    </message>
    <message>
        <source>more ink is left than there was before (%1 g)</source>
        <translation>es ist mehr Farbe übrig, als vorher da war (%1 g)</translation>
    </message>
    <message>
        <source>Weigh again, or change the answer before at the end.</source>
        <translation>Noch einmal wiegen oder am Ende die Antwort davor ändern.</translation>
    </message>
    <message>
        <source>the empty container weighs more than with what is in it (%1 g)</source>
        <translation>das leere Gebinde wiegt mehr als mit dem Inhalt (%1 g)</translation>
    </message>
    <message>
        <source>that is before it began (%1)</source>
        <translation>das liegt vor dem Anfang (%1)</translation>
    </message>
    <message>
        <source>Where it went on past midnight, write the day too.</source>
        <translation>Wenn es über Mitternacht ging, auch den Tag schreiben.</translation>
    </message>
    <message>
        <source>%1 was not pulled</source>
        <translation>%1 wurde nicht gedruckt</translation>
    </message>
    <message>
        <source>%1 were not pulled</source>
        <translation>%1 wurden nicht gedruckt</translation>
    </message>
    <message>
        <source>Pulled were %1; name sheets of these.</source>
        <translation>Gedruckt wurden %1; Abzüge davon nennen.</translation>
    </message>
    <message>
        <source>That is later today.</source>
        <translation>Das ist heute, aber später.</translation>
    </message>
    <message>
        <source>That is tomorrow.</source>
        <translation>Das ist morgen.</translation>
    </message>
    <message>
        <source>That is in %1 days.</source>
        <translation>Das ist in %1 Tagen.</translation>
    </message>
    <message>
        <source>there is no answer %1</source>
        <translation>es gibt keine Antwort %1</translation>
    </message>
    <message>
        <source>The numbers stand before the answers above; drop gives it up.</source>
        <translation>Die Nummern stehen oben vor den Antworten; drop gibt es auf.</translation>
    </message>
    <message>
        <source>&quot;%1&quot; is no date</source>
        <translation>„%1“ ist kein Datum</translation>
    </message>
    <message>
        <source>Write today, yesterday, 26.11.2026 with the day first, or 2026-11-26%1; what is badly known as 2026-11, 2026 or 2026~.</source>
        <translation>Schreiben als heute, gestern, 26.11.2026 mit dem Tag zuerst oder 2026-11-26%1; was man schlecht weiß, als 2026-11, 2026 oder 2026~.</translation>
    </message>
    <message>
        <source>&quot;%1&quot; is no number</source>
        <translation>„%1“ ist keine Zahl</translation>
    </message>
    <message>
        <source>Write digits, with a point before decimals, such as 21.5.</source>
        <translation>Ziffern schreiben, mit Komma oder Punkt vor den Dezimalen, etwa 21,5.</translation>
    </message>
    <message>
        <source>&quot;%1&quot; is none of these</source>
        <translation>„%1“ ist keines davon</translation>
    </message>
    <message>
        <source>Did you mean %1?</source>
        <translation>Meinten Sie %1?</translation>
    </message>
    <message>
        <source>It is one of %1.</source>
        <translation>Es ist eines von %1.</translation>
    </message>
    <message>
        <source> or </source>
        <translation> oder </translation>
    </message>
    <message>
        <source>, and a time behind it or alone, such as 14:30, 14.30 or 1430</source>
        <translation>, und eine Uhrzeit dahinter oder allein, etwa 14:30, 14.30 oder 1430</translation>
    </message>
    <message>
        <source>&quot;%1&quot; can be %2 or %3</source>
        <translation>„%1“ kann %2 oder %3 sein</translation>
    </message>
    <message>
        <source>Write it like one of the two, or with dots: day.month.year.</source>
        <translation>Wie eines von beiden schreiben, oder mit Punkten: Tag.Monat.Jahr.</translation>
    </message>
    <message>
        <source>all sheets of which edition is not said</source>
        <translation>von welcher Auflage alle gemeint sind, ist nicht gesagt</translation>
    </message>
    <message>
        <source>Type the code of the edition alone for all its sheets.</source>
        <translation>Für alle Abzüge das Kürzel der Auflage allein eingeben.</translation>
    </message>
    <message>
        <source>of which edition sheets %1 are is not said</source>
        <translation>von welcher Auflage %1 sind, ist nicht gesagt</translation>
    </message>
    <message>
        <source>Write its code before the numbers, such as EEL:%1.</source>
        <translation>Ihr Kürzel vor die Nummern schreiben, etwa EEL:%1.</translation>
    </message>
    <message>
        <source>which numbers all of them are is not known here</source>
        <translation>welche Nummern alle sind, ist hier nicht bekannt</translation>
    </message>
    <message>
        <source>Write working numbers, such as 1-18 or 4, 9.</source>
        <translation>Arbeitsnummern schreiben, etwa 1-18 oder 4, 9.</translation>
    </message>
</context>
<context>
    <name>question</name>
    <message>
        <source>No portion of ink is recorded for this edition, so none is asked for; the run is recorded all the same. For its ink to be in the book another time: %1, then %2 for each thing that goes into it.</source>
        <translation>Für diese Auflage ist keine Farbportion verzeichnet, also wird nach keiner gefragt; der Druckgang wird trotzdem verzeichnet. Damit seine Farbe ein andermal im Buch steht: %1, dann %2 für alles, was hineinkommt.</translation>
    </message>
    <message>
        <source>Which file</source>
        <translation>Welche Datei</translation>
    </message>
    <message>
        <source>Which edition does it show</source>
        <translation>Welche Auflage zeigt sie</translation>
    </message>
    <message>
        <source>Which impression, such as EEL:7</source>
        <translation>Welcher Abzug, etwa EEL:7</translation>
    </message>
    <message>
        <source>What it shows, in words</source>
        <translation>Was sie zeigt, in Worten</translation>
    </message>
    <message>
        <source>When it was taken</source>
        <translation>Wann sie aufgenommen wurde</translation>
    </message>
    <message>
        <source>A short code for the edition</source>
        <translation>Ein Kürzel für die Auflage</translation>
    </message>
    <message>
        <source>The title, as it stands on the prints</source>
        <translation>Der Titel, wie er auf den Abzügen steht</translation>
    </message>
    <message>
        <source>Who made the image</source>
        <translation>Von wem das Bild ist</translation>
    </message>
    <message>
        <source>Who prints it</source>
        <translation>Wer sie druckt</translation>
    </message>
    <message>
        <source>The year</source>
        <translation>Das Jahr</translation>
    </message>
    <message>
        <source>The paper, in words</source>
        <translation>Das Papier, in Worten</translation>
    </message>
    <message>
        <source>Height and width of the image in mm, such as 300x200</source>
        <translation>Höhe und Breite des Bildes in mm, etwa 300x200</translation>
    </message>
    <message>
        <source>Height and width of the sheet in mm</source>
        <translation>Höhe und Breite des Bogens in mm</translation>
    </message>
    <message>
        <source>How many numbered impressions are declared</source>
        <translation>Wie viele nummerierte Abzüge erklärt sind</translation>
    </message>
    <message>
        <source>Proofs declared beside them, such as AP=3</source>
        <translation>Abzüge, die daneben erklärt sind, etwa AP=3</translation>
    </message>
    <message>
        <source>What kind of record</source>
        <translation>Welche Art von Eintrag</translation>
    </message>
    <message>
        <source>Its id: letters, digits and . _ - / only</source>
        <translation>Seine Kennung: nur Buchstaben, Ziffern und . _ - /</translation>
    </message>
    <message>
        <source>A field and what it is, such as note=&quot;seen at noon&quot;</source>
        <translation>Ein Feld und was es ist, etwa note=&quot;mittags gesehen&quot;</translation>
    </message>
    <message>
        <source>Why the book was wrong, where it says otherwise already</source>
        <translation>Warum das Buch falsch war, wo es schon anderes sagt</translation>
    </message>
    <message>
        <source>What was agreed</source>
        <translation>Was vereinbart wurde</translation>
    </message>
    <message>
        <source>Which sheets, such as EEL:1-12,15</source>
        <translation>Welche Abzüge, etwa EEL:1-12,15</translation>
    </message>
    <message>
        <source>Who gets them</source>
        <translation>Wer sie bekommt</translation>
    </message>
    <message>
        <source>When it was agreed</source>
        <translation>Wann es vereinbart wurde</translation>
    </message>
    <message>
        <source>When it ends</source>
        <translation>Wann es endet</translation>
    </message>
    <message>
        <source>The price of all of them together</source>
        <translation>Der Preis für alle zusammen</translation>
    </message>
    <message>
        <source>The terms, in words</source>
        <translation>Die Bedingungen, in Worten</translation>
    </message>
    <message>
        <source>Where they went, if they are gone already</source>
        <translation>Wohin sie gingen, wenn sie schon fort sind</translation>
    </message>
    <message>
        <source>Where do they hang</source>
        <translation>Wo hängen sie</translation>
    </message>
    <message>
        <source>When</source>
        <translation>Wann</translation>
    </message>
    <message>
        <source>Under interleaving, so that no light reaches the face</source>
        <translation>Unter Zwischenlagen, so dass kein Licht auf das Bild fällt</translation>
    </message>
    <message>
        <source>Which edition</source>
        <translation>Welche Auflage</translation>
    </message>
    <message>
        <source>Their working numbers, such as 1-24</source>
        <translation>Ihre Arbeitsnummern, etwa 1-24</translation>
    </message>
    <message>
        <source>Its place in the printing order</source>
        <translation>Ihr Platz in der Druckfolge</translation>
    </message>
    <message>
        <source>The colour, in words</source>
        <translation>Der Farbton, in Worten</translation>
    </message>
    <message>
        <source>Which block it is printed from</source>
        <translation>Von welchem Druckstock sie gedruckt wird</translation>
    </message>
    <message>
        <source>Which stock mix or let-down it is printed from</source>
        <translation>Mit welcher Vorratsmischung oder welchem Verschnitt sie gedruckt wird</translation>
    </message>
    <message>
        <source>The inked share of the image, 0 to 1</source>
        <translation>Der eingefärbte Anteil des Bildes, 0 bis 1</translation>
    </message>
    <message>
        <source>Wet ink aimed at, in g/m²</source>
        <translation>Angestrebte nasse Farbe, in g/m²</translation>
    </message>
    <message>
        <source>Which sheets were looked at, such as EEL:4</source>
        <translation>Welche Abzüge wurden geprüft, etwa EEL:4</translation>
    </message>
    <message>
        <source>How does the ink feel</source>
        <translation>Wie fühlt sich die Farbe an</translation>
    </message>
    <message>
        <source>How does the colour look beside what it should be</source>
        <translation>Wie sieht der Farbton aus, neben dem, der er sein soll</translation>
    </message>
    <message>
        <source>Which other sheets do they speak for</source>
        <translation>Für welche anderen Abzüge sprechen sie</translation>
    </message>
    <message>
        <source>Anything else worth keeping</source>
        <translation>Was sonst noch festzuhalten ist</translation>
    </message>
    <message>
        <source>At which place</source>
        <translation>An welchem Ort</translation>
    </message>
    <message>
        <source>When did it begin, such as 09:30</source>
        <translation>Wann begann es, etwa 09:30</translation>
    </message>
    <message>
        <source>When did it end</source>
        <translation>Wann endete es</translation>
    </message>
    <message>
        <source>The mean level of light in lux</source>
        <translation>Die mittlere Beleuchtungsstärke in Lux</translation>
    </message>
    <message>
        <source>Or the light of all that time, in lux hours</source>
        <translation>Oder das Licht der ganzen Zeit, in Luxstunden</translation>
    </message>
    <message>
        <source>Near ultraviolet of all that time, in Wh/m²</source>
        <translation>Nahes Ultraviolett der ganzen Zeit, in Wh/m²</translation>
    </message>
    <message>
        <source>Where do they go</source>
        <translation>Wohin kommen sie</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Warum</translation>
    </message>
    <message>
        <source>Interleaved or stacked, so that no light reaches the face</source>
        <translation>Mit Zwischenlagen oder gestapelt, so dass kein Licht auf das Bild fällt</translation>
    </message>
    <message>
        <source>Which layer was printed</source>
        <translation>Welche Schicht wurde gedruckt</translation>
    </message>
    <message>
        <source>Which sheets were pulled, by working number</source>
        <translation>Welche Abzüge wurden gedruckt, nach Arbeitsnummer</translation>
    </message>
    <message>
        <source>Which of them were spoiled</source>
        <translation>Welche davon sind verdorben</translation>
    </message>
    <message>
        <source>Which portion of ink was it</source>
        <translation>Welche Farbportion war es</translation>
    </message>
    <message>
        <source>When did it begin</source>
        <translation>Wann begann es</translation>
    </message>
    <message>
        <source>When was the last sheet off the block</source>
        <translation>Wann war der letzte Abzug vom Druckstock</translation>
    </message>
    <message>
        <source>Where do the good ones hang now</source>
        <translation>Wo hängen die guten jetzt</translation>
    </message>
    <message>
        <source>On which press, or by hand and with what</source>
        <translation>Auf welcher Presse, oder von Hand und womit</translation>
    </message>
    <message>
        <source>What lay behind the sheet, as packing</source>
        <translation>Was lag als Aufzug hinter dem Bogen</translation>
    </message>
    <message>
        <source>Who printed</source>
        <translation>Wer druckte</translation>
    </message>
    <message>
        <source>Temperature of the room in degrees Celsius</source>
        <translation>Temperatur des Raums in Grad Celsius</translation>
    </message>
    <message>
        <source>Relative humidity of the room in percent</source>
        <translation>Relative Feuchte des Raums in Prozent</translation>
    </message>
    <message>
        <source>Ink on the slab before the first sheet, in g</source>
        <translation>Farbe auf dem Farbstein vor dem ersten Abzug, in g</translation>
    </message>
    <message>
        <source>Ink left on the slab after the last, in g</source>
        <translation>Farbe auf dem Farbstein nach dem letzten, in g</translation>
    </message>
    <message>
        <source>Working numbers = what is written, such as 5-24=1/20</source>
        <translation>Arbeitsnummern = was geschrieben steht, etwa 5-24=1/20</translation>
    </message>
    <message>
        <source>The day of signing</source>
        <translation>Der Tag des Signierens</translation>
    </message>
    <message>
        <source>Which day</source>
        <translation>Welcher Tag</translation>
    </message>
    <message>
        <source>How was the sky, or how many eighths were covered</source>
        <translation>Wie war der Himmel, oder wie viele Achtel waren bedeckt</translation>
    </message>
    <message>
        <source>Which tin, tube or bottle</source>
        <translation>Welche Dose, Tube oder Flasche</translation>
    </message>
    <message>
        <source>What was weighed, in g; 0 where nothing is left</source>
        <translation>Was gewogen wurde, in g; 0, wo nichts übrig ist</translation>
    </message>
    <message>
        <source>Of that the empty container, in g</source>
        <translation>Davon das leere Gebinde, in g</translation>
    </message>
    <message>
        <source>Its id</source>
        <translation>Seine Kennung</translation>
    </message>
    <message>
        <source>Why it should not be there</source>
        <translation>Warum er nicht da sein sollte</translation>
    </message>
    <message>
        <source>Which mix gains or loses</source>
        <translation>Welche Mischung gewinnt oder verliert</translation>
    </message>
    <message>
        <source>From which tin, tube or bottle</source>
        <translation>Aus welcher Dose, Tube oder Flasche</translation>
    </message>
    <message>
        <source>Or from which other mix</source>
        <translation>Oder aus welcher anderen Mischung</translation>
    </message>
    <message>
        <source>Then it was taken out to be used</source>
        <translation>Dann wurde es zum Gebrauch entnommen</translation>
    </message>
    <message>
        <source>Then it was thrown away</source>
        <translation>Dann wurde es weggeworfen</translation>
    </message>
    <message>
        <source>How much, in g, or the word unknown</source>
        <translation>Wie viel, in g, oder das Wort unknown</translation>
    </message>
    <message>
        <source>On which balance</source>
        <translation>Auf welcher Waage</translation>
    </message>
    <message>
        <source>Who is to be forgotten</source>
        <translation>Wer soll vergessen werden</translation>
    </message>
    <message>
        <source>Why, without the name: the journal keeps it</source>
        <translation>Warum, ohne den Namen: das Journal behält es</translation>
    </message>
</context>
<context>
    <name>ready</name>
    <message>
        <source>On %1: %2.</source>
        <translation>Am %1: %2.</translation>
    </message>
    <message>
        <source>no impression is concerned</source>
        <translation>kein Abzug ist betroffen</translation>
    </message>
    <message>
        <source> and </source>
        <translation> und </translation>
    </message>
    <message>
        <source>%1 spoiled or destroyed were left out.</source>
        <translation>%1 verdorbene oder vernichtete sind weggelassen.</translation>
    </message>
    <message>
        <source>impressions</source>
        <translation>Abzüge</translation>
    </message>
    <message>
        <source>verdict</source>
        <translation>Urteil</translation>
    </message>
    <message>
        <source>last extender-rich layer</source>
        <translation>letzte Schicht mit viel Transparent</translation>
    </message>
    <message>
        <source>days in light</source>
        <translation>Tage im Licht</translation>
    </message>
    <message>
        <source>look since</source>
        <translation>Prüfung seither</translation>
    </message>
    <message>
        <source>now at</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>No impression is concerned.</source>
        <translation>Kein Abzug ist betroffen.</translation>
    </message>
    <message>
        <source>Judged by the house rules; --why prints them, and all reasons.</source>
        <translation>Beurteilt nach den Hausregeln; --why zeigt sie und alle Gründe.</translation>
    </message>
</context>
<context>
    <name>record</name>
    <message>
        <source>new</source>
        <translation>neu</translation>
    </message>
    <message>
        <source>changed</source>
        <translation>geändert</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>berichtigt</translation>
    </message>
    <message>
        <source>struck out</source>
        <translation>gestrichen</translation>
    </message>
    <message>
        <source>unchanged</source>
        <translation>unverändert</translation>
    </message>
    <message>
        <source>record</source>
        <translation>Eintrag</translation>
    </message>
    <message>
        <source>what it says</source>
        <translation>was er sagt</translation>
    </message>
    <message>
        <source>The book says this already; nothing was changed.</source>
        <translation>Das Buch sagt das schon; nichts wurde geändert.</translation>
    </message>
    <message>
        <source>Tried only: nothing was recorded.</source>
        <translation>Nur versucht: nichts wurde verzeichnet.</translation>
    </message>
    <message>
        <source>Recorded in %1.</source>
        <translation>In %1 verzeichnet.</translation>
    </message>
</context>
<context>
    <name>summary</name>
    <message>
        <source>Print the manual page</source>
        <translation>Die Handbuchseite ausgeben</translation>
    </message>
    <message>
        <source>Print a completion script for a shell</source>
        <translation>Ein Vervollständigungsskript für eine Shell ausgeben</translation>
    </message>
    <message>
        <source>Keep a photograph or scan in the book</source>
        <translation>Ein Foto oder einen Scan im Buch aufheben</translation>
    </message>
    <message>
        <source>Write the file of an attachment out again</source>
        <translation>Die Datei eines Anhangs wieder hinausschreiben</translation>
    </message>
    <message>
        <source>Find what does not hold together in the book</source>
        <translation>Finden, was im Buch nicht zusammenpasst</translation>
    </message>
    <message>
        <source>Make a new book</source>
        <translation>Ein neues Buch anlegen</translation>
    </message>
    <message>
        <source>How much of two mixes to blend for a share between the two</source>
        <translation>Wie viel von zwei Mischungen für einen Anteil dazwischen zu verschneiden ist</translation>
    </message>
    <message>
        <source>Say what the drawdowns teach about each lot, and how far that can be trusted</source>
        <translation>Sagen, was die Aufstriche über jedes Gebinde lehren und wie weit dem zu trauen ist</translation>
    </message>
    <message>
        <source>Say whether a sheet is still true, and whether it was altered</source>
        <translation>Sagen, ob ein Blatt noch stimmt und ob es verändert wurde</translation>
    </message>
    <message>
        <source>Say what colour a reading is, and how far another one is from it</source>
        <translation>Sagen, welche Farbe eine Messung ist und wie weit eine andere davon entfernt</translation>
    </message>
    <message>
        <source>Say how much ink an edition took, layer by layer, and what it cost</source>
        <translation>Sagen, wie viel Farbe eine Auflage brauchte, Schicht für Schicht, und was sie kostete</translation>
    </message>
    <message>
        <source>Record what happened on a day, entry by entry, all of it at once</source>
        <translation>Verzeichnen, was an einem Tag geschah, Eintrag für Eintrag, alles auf einmal</translation>
    </message>
    <message>
        <source>Say what lies in each drawer and box, and what of it is still at risk</source>
        <translation>Sagen, was in jeder Schublade und Schachtel liegt und was davon noch gefährdet ist</translation>
    </message>
    <message>
        <source>Begin a new edition</source>
        <translation>Eine neue Auflage beginnen</translation>
    </message>
    <message>
        <source>Enter or change any record, field by field</source>
        <translation>Einen beliebigen Eintrag Feld für Feld eingeben oder ändern</translation>
    </message>
    <message>
        <source>Find records by words in their titles, names, colours and notes</source>
        <translation>Einträge nach Worten in Titeln, Namen, Farbtönen und Bemerkungen finden</translation>
    </message>
    <message>
        <source>Estimate when prints should have had their light, here and at other places</source>
        <translation>Schätzen, wann Abzüge ihr Licht gehabt haben sollten, hier und an anderen Orten</translation>
    </message>
    <message>
        <source>List the sheets that were handed out, and which are no longer true</source>
        <translation>Die ausgegebenen Blätter auflisten und welche nicht mehr stimmen</translation>
    </message>
    <message>
        <source>Record that a sheet was handed out</source>
        <translation>Verzeichnen, dass ein Blatt ausgegeben wurde</translation>
    </message>
    <message>
        <source>Record that sheets go to someone: consigned, sold, lent, given, returned</source>
        <translation>Verzeichnen, dass Abzüge zu jemandem gehen: in Kommission, verkauft, verliehen, verschenkt, zurück</translation>
    </message>
    <message>
        <source>Hang sheets to dry or to see light</source>
        <translation>Abzüge zum Trocknen oder ins Licht hängen</translation>
    </message>
    <message>
        <source>Say what was recorded, changed and corrected, when, by whom and why</source>
        <translation>Sagen, was verzeichnet, geändert und berichtigt wurde, wann, von wem und warum</translation>
    </message>
    <message>
        <source>How much ink layers need, and of which mixes</source>
        <translation>Wie viel Farbe Schichten brauchen und von welchen Mischungen</translation>
    </message>
    <message>
        <source>Enter sheets of paper under their working numbers</source>
        <translation>Bögen unter ihren Arbeitsnummern eintragen</translation>
    </message>
    <message>
        <source>Plan a colour run of an edition</source>
        <translation>Eine Schicht einer Auflage planen</translation>
    </message>
    <message>
        <source>Estimate the light that impressions have had since their last extender-rich layer</source>
        <translation>Schätzen, wie viel Licht Abzüge seit der letzten Schicht mit viel Transparent hatten</translation>
    </message>
    <message>
        <source>Say what looks and readings teach about the light that brings colours back</source>
        <translation>Sagen, was Prüfungen und Messungen über das Licht lehren, das Farbtöne zurückbringt</translation>
    </message>
    <message>
        <source>List the records of one kind</source>
        <translation>Die Einträge einer Art auflisten</translation>
    </message>
    <message>
        <source>Record what the eye and a fingertip found</source>
        <translation>Verzeichnen, was Auge und Fingerspitze fanden</translation>
    </message>
    <message>
        <source>Find recipes for a recorded colour from the lots that are on the shelf</source>
        <translation>Rezepte für einen verzeichneten Farbton aus den vorhandenen Gebinden finden</translation>
    </message>
    <message>
        <source>Record light measured at a place over some time of a day</source>
        <translation>Licht verzeichnen, das an einem Ort eine Zeit des Tages lang gemessen wurde</translation>
    </message>
    <message>
        <source>How to weigh an ink again, step by step, on the balance that is there</source>
        <translation>Wie eine Farbe noch einmal gewogen wird, Schritt für Schritt, auf der vorhandenen Waage</translation>
    </message>
    <message>
        <source>Move sheets from one place to another</source>
        <translation>Abzüge von einem Ort an einen anderen bringen</translation>
    </message>
    <message>
        <source>Say what colour a mix, a layer, or all layers of an edition should have</source>
        <translation>Sagen, welche Farbe eine Mischung, eine Schicht oder alle Schichten einer Auflage haben sollten</translation>
    </message>
    <message>
        <source>Record a printing run: one layer, on these sheets, with one portion of ink</source>
        <translation>Einen Druckgang verzeichnen: eine Schicht, auf diesen Abzügen, mit einer Farbportion</translation>
    </message>
    <message>
        <source>Too much of something went into the dish: what to add of everything else</source>
        <translation>Zu viel von etwas kam in die Schale: was von allem anderen dazuzugeben ist</translation>
    </message>
    <message>
        <source>Say which impressions may be put away and which still need light</source>
        <translation>Sagen, welche Abzüge eingelagert werden dürfen und welche noch Licht brauchen</translation>
    </message>
    <message>
        <source>Say what to add to a batch whose test drawdown was measured</source>
        <translation>Sagen, was zu einem Ansatz dazukommt, dessen Probeaufstrich gemessen wurde</translation>
    </message>
    <message>
        <source>Write a sheet as a PDF file</source>
        <translation>Ein Blatt als PDF-Datei schreiben</translation>
    </message>
    <message>
        <source>Show one record with what belongs to it</source>
        <translation>Einen Eintrag mit dem zeigen, was dazugehört</translation>
    </message>
    <message>
        <source>Record the designations given at signing</source>
        <translation>Die Bezeichnungen verzeichnen, die beim Signieren vergeben wurden</translation>
    </message>
    <message>
        <source>Record how the sky was on a day, for the light that prints have</source>
        <translation>Verzeichnen, wie der Himmel an einem Tag war, für das Licht der Abzüge</translation>
    </message>
    <message>
        <source>Say which heaps of ink are still there, how old they are and how long they last</source>
        <translation>Sagen, welche Farbhaufen noch da sind, wie alt sie sind und wie lange sie halten</translation>
    </message>
    <message>
        <source>Say what is left in the tins, how long it lasts and what a gram costs</source>
        <translation>Sagen, was in den Dosen übrig ist, wie lange es reicht und was ein Gramm kostet</translation>
    </message>
    <message>
        <source>Record what a tin, tube or bottle still holds, weighed again</source>
        <translation>Verzeichnen, was eine Dose, Tube oder Flasche noch enthält, neu gewogen</translation>
    </message>
    <message>
        <source>Strike out a record that should never have been recorded</source>
        <translation>Einen Eintrag streichen, der nie hätte verzeichnet werden sollen</translation>
    </message>
    <message>
        <source>Take record files into the book</source>
        <translation>Dateien mit Einträgen ins Buch nehmen</translation>
    </message>
    <message>
        <source>Look at what a light logger measured at a place, and record its days</source>
        <translation>Ansehen, was ein Lichtlogger an einem Ort gemessen hat, und seine Tage verzeichnen</translation>
    </message>
    <message>
        <source>Look at a file of colour measurements, and record what it holds</source>
        <translation>Eine Datei mit Farbmessungen ansehen und verzeichnen, was darin steht</translation>
    </message>
    <message>
        <source>Take bench sheets that were filled in as PDF forms into the book</source>
        <translation>Als PDF-Formular ausgefüllte Arbeitsblätter ins Buch nehmen</translation>
    </message>
    <message>
        <source>Look at a table in CSV, and take its rows into the book</source>
        <translation>Eine Tabelle in CSV ansehen und ihre Zeilen ins Buch nehmen</translation>
    </message>
    <message>
        <source>Say what there is to do now</source>
        <translation>Sagen, was jetzt zu tun ist</translation>
    </message>
    <message>
        <source>Say which impressions hold ink of a lot, and who has them</source>
        <translation>Sagen, welche Abzüge Farbe aus einem Gebinde tragen und wer sie hat</translation>
    </message>
    <message>
        <source>Take back what was recorded last</source>
        <translation>Zurücknehmen, was zuletzt verzeichnet wurde</translation>
    </message>
    <message>
        <source>Prove that the book is what was recorded</source>
        <translation>Beweisen, dass das Buch ist, was verzeichnet wurde</translation>
    </message>
    <message>
        <source>Record one weighing: into a mix, out of it, or thrown away</source>
        <translation>Eine Wägung verzeichnen: in eine Mischung, heraus oder weggeworfen</translation>
    </message>
    <message>
        <source>Write the book, or a part of it, as record files</source>
        <translation>Das Buch oder einen Teil davon als Dateien mit Einträgen schreiben</translation>
    </message>
    <message>
        <source>Write the records of one kind, or a list, as a table in CSV</source>
        <translation>Die Einträge einer Art oder eine Liste als Tabelle in CSV schreiben</translation>
    </message>
    <message>
        <source>Write an edition, or some sheets, as museums describe things</source>
        <translation>Eine Auflage oder einzelne Blätter so beschreiben, wie Museen es tun</translation>
    </message>
    <message>
        <source>Pack the book, or an edition, for an archive</source>
        <translation>Das Buch oder eine Auflage für ein Archiv packen</translation>
    </message>
    <message>
        <source>Say whether a bag is what was packed</source>
        <translation>Sagen, ob ein Paket noch ist, was gepackt wurde</translation>
    </message>
    <message>
        <source>Make a book of a bag</source>
        <translation>Aus einem Paket wieder ein Buch machen</translation>
    </message>
    <message>
        <source>Take what another book says into this one</source>
        <translation>Übernehmen, was ein anderes Buch sagt</translation>
    </message>
    <message>
        <source>Make a copy of the book that can stand in for it</source>
        <translation>Eine Kopie des Buchs machen, die an seine Stelle treten kann</translation>
    </message>
    <message>
        <source>Bring a backup back as the book</source>
        <translation>Eine Sicherung als Buch zurückholen</translation>
    </message>
    <message>
        <source>Read what can still be read of a damaged book into a new one</source>
        <translation>Aus einem beschädigten Buch in ein neues retten, was noch lesbar ist</translation>
    </message>
    <message>
        <source>Forget who a party is, for good</source>
        <translation>Für immer vergessen, wer eine Person ist</translation>
    </message>
</context>
<context>
    <name>today</name>
    <message>
        <source>where</source>
        <translation>wo</translation>
    </message>
    <message>
        <source>A day was told and not recorded yet: rackbook day goes on with it.</source>
        <translation>Ein Tag ist erzählt und noch nicht verzeichnet: rackbook day macht damit weiter.</translation>
    </message>
    <message>
        <source>Nothing waits.</source>
        <translation>Nichts wartet.</translation>
    </message>
    <message>
        <source>rackbook ready --why gives the reasons about prints; nothing is ready without recorded looks. What hangs at a gallery or a holder&apos;s is not listed here.</source>
        <translation>rackbook ready --why nennt die Gründe zu den Abzügen; ohne verzeichnete Prüfung ist nichts bereit. Was in einer Galerie oder bei Besitzern hängt, steht hier nicht.</translation>
    </message>
    <message>
        <source>Bring out of the dark</source>
        <translation>Aus dem Dunkeln holen</translation>
    </message>
    <message>
        <source>Look at, and feel</source>
        <translation>Ansehen und befühlen</translation>
    </message>
    <message>
        <source>May be put away</source>
        <translation>Darf eingelagert werden</translation>
    </message>
    <message>
        <source>Leave in the light</source>
        <translation>Im Licht lassen</translation>
    </message>
    <message>
        <source>Find out: the record does not decide it</source>
        <translation>Herausfinden: das Buch entscheidet es nicht</translation>
    </message>
    <message>
        <source>1 print</source>
        <translation>1 Abzug</translation>
    </message>
    <message>
        <source>%1 prints</source>
        <translation>%1 Abzüge</translation>
    </message>
    <message>
        <source>place not recorded</source>
        <translation>Ort nicht verzeichnet</translation>
    </message>
    <message>
        <source>Ink on the slab</source>
        <translation>Farbe auf dem Farbstein</translation>
    </message>
    <message>
        <source>past its life by the house rules: try it, or scrape it off</source>
        <translation>nach den Hausregeln zu alt: versuchen oder abkratzen</translation>
    </message>
    <message>
        <source>near its end</source>
        <translation>bald zu alt</translation>
    </message>
    <message>
        <source>Tins, tubes and bottles</source>
        <translation>Dosen, Tuben und Flaschen</translation>
    </message>
    <message>
        <source>open for long: try a drawdown</source>
        <translation>lange offen: einen Aufstrich versuchen</translation>
    </message>
    <message>
        <source>less than a month of use is left</source>
        <translation>reicht keinen Monat mehr</translation>
    </message>
    <message>
        <source>Due back</source>
        <translation>Zurückerwartet</translation>
    </message>
    <message>
        <source>%1 overdue since %2</source>
        <translation>%1, überfällig seit %2</translation>
    </message>
    <message>
        <source>%1 ends %2</source>
        <translation>%1, endet %2</translation>
    </message>
    <message>
        <source>Promised to buyers</source>
        <translation>Käufern versprochen</translation>
    </message>
</context>
<context>
    <name>typing</name>
    <message>
        <source>Such as now, today, yesterday, 26.11.2026 or 26.11. with the day first, 2026-11-26; and a time behind it or alone: 14:30, 14.30 or 1430.</source>
        <translation>Etwa jetzt, heute, gestern, 26.11.2026 oder 26.11. mit dem Tag zuerst, 2026-11-26; und eine Uhrzeit dahinter oder allein: 14:30, 14.30 oder 1430.</translation>
    </message>
    <message>
        <source>Such as today, yesterday, 26.11.2026 or 26.11. with the day first, 2026-11-26; what is badly known as 2026-11, 2026 or 2026~.</source>
        <translation>Etwa heute, gestern, 26.11.2026 oder 26.11. mit dem Tag zuerst, 2026-11-26; was man schlecht weiß, als 2026-11, 2026 oder 2026~.</translation>
    </message>
    <message>
        <source>Such as 1-24, 1 to 24, or 4 and 9.</source>
        <translation>Etwa 1-24, 1 bis 24, oder 4 und 9.</translation>
    </message>
    <message>
        <source>Such as 1-18, 1 to 18, 4 and 9, or all.</source>
        <translation>Etwa 1-18, 1 bis 18, 4 und 9, oder alle.</translation>
    </message>
    <message>
        <source>The code of an edition alone, or numbers behind it: EEL 1-12, EEL 4 and 9; where it is plain which edition is meant, the numbers alone, or all.</source>
        <translation>Das Kürzel einer Auflage allein, oder Nummern dahinter: EEL 1-12, EEL 4 und 9; wo klar ist, welche Auflage, die Nummern allein oder alle.</translation>
    </message>
</context>
<context>
    <name>verdict</name>
    <message>
        <source>ready</source>
        <translation>bereit</translation>
    </message>
    <message>
        <source>a look is due</source>
        <translation>Prüfung fällig</translation>
    </message>
    <message>
        <source>more light</source>
        <translation>mehr Licht</translation>
    </message>
    <message>
        <source>bring it out</source>
        <translation>heraus ans Licht</translation>
    </message>
    <message>
        <source>not affected</source>
        <translation>nicht betroffen</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
</context>
</TS>
