"""Prints what an independent reader finds in a calendar, as JSON: tests/exchange/CalendarFileTest.cpp."""
import json
import sys

from icalendar import Calendar

with open(sys.argv[1], "rb") as file:
    calendar = Calendar.from_ical(file.read())
events = []
for event in calendar.walk("VEVENT"):
    alarms = event.walk("VALARM")
    events.append({
        "uid": str(event["UID"]),
        "from": event.decoded("DTSTART").isoformat(),
        "until": event.decoded("DTEND").isoformat(),
        "stamp": event.decoded("DTSTAMP").isoformat(),
        "summary": str(event["SUMMARY"]),
        "description": str(event.get("DESCRIPTION", "")),
        "busy": str(event["TRANSP"]),
        "alarms": [[str(alarm["ACTION"]), str(alarm["DESCRIPTION"]),
                    alarm.decoded("TRIGGER").total_seconds()] for alarm in alarms],
        "errors": [list(error) for error in event.errors],
    })
print(json.dumps({"product": str(calendar["PRODID"]), "version": str(calendar["VERSION"]),
                  "events": events}))
