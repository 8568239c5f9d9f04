// mutool run fill-form.js IN.pdf OUT.pdf VALUES: fills in the fields whose labels stand in VALUES,
// one a line, each before a tab and what goes in; "on" ticks a box, and \n begins a line.
var values = {};
read(scriptArgs[2]).split("\n").forEach(function (line) {
    var tab = line.indexOf("\t");
    if (tab > 0)
        values[line.substring(0, tab)] = line.substring(tab + 1).replace(/\\n/g, "\n");
});
var document = new PDFDocument(scriptArgs[0]);
var filled = 0;
for (var i = 0; i < document.countPages(); ++i) {
    document.loadPage(i).getWidgets().forEach(function (widget) {
        var value = values[widget.getLabel()];
        if (value === undefined)
            return;
        if (widget.getFieldType() === "checkbox")
            widget.toggle();
        else if (widget.getFieldType() === "combobox")
            widget.setChoiceValue(value);
        else
            widget.setTextValue(value);
        widget.update();
        ++filled;
    });
}
if (filled !== Object.keys(values).length)
    throw new Error("filled in " + filled + " of " + Object.keys(values).length);
document.save(scriptArgs[1], "");
