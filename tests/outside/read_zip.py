"""Opens an archive with Python's zipfile, tests every member, and prints names, sizes, SHA-256 and the text of each member as JSON."""
import hashlib
import json
import sys
import zipfile

with zipfile.ZipFile(sys.argv[1]) as archive:
    broken = archive.testzip()
    members = []
    for info in archive.infolist():
        content = archive.read(info)
        members.append(
            {
                "name": info.filename,
                "bytes": len(content),
                "sha256": hashlib.sha256(content).hexdigest(),
                "time": list(info.date_time),
                "text": content.decode("latin-1"),
            }
        )
    print(json.dumps({"broken": broken, "members": members}))
