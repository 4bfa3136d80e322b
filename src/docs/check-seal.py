#!/usr/bin/env python3
"""Checks the chain of hashes of a Chordlog database without Chordlog: check-seal.py chordlog.db
The form of entries and rows is described in seal.md. Exit code 1 with a line for each fault."""
import hashlib, sqlite3, struct, sys

TABLES = {
    1: ("reading", "station station_sequence job_id piece position mode value_nm scatter_nm"
        " sample_count first_sample last_sample monotonic_nanos wall_micros depth_nm set_up_id"
        " radius_mm lower_mm upper_mm curvature_per_mm standard_uncertainty_per_mm coverage_factor"
        " degrees_of_freedom decision marks clock raw_hex kind pass revision measured_by"
        " material_lot run_id"),
    2: ("change", "id at_micros made_by what old_value new_value why"),
    3: ("exclusion", "id reading_id job_id excluded reason at_micros made_by"),
    4: ("calibration", "id station bridge_id span_mm zero_offset_mm foot_radius_mm covariance"
        " degrees_of_freedom taken_micros due_micros taken_by summary"),
    5: ("specification_revision", "job_id revision at_micros made_by why specification"),
    6: ("set_up", "id body"),
    7: ("zero", "id station bridge_id value_nm scatter_nm sample_count taken_micros taken_by"),
    8: ("job_event", "id job_id machine kind after_reading_id at_micros setting_before"
        " setting_after material_lot note made_by"),
    9: ("event_withdrawal", "id event_id reason at_micros made_by"),
    10: ("alert_event", "id alert_id revision kind about subject what from_state state present"
        " unsteady since_micros changed_micros shelved_until_micros figures detail"
        " first_reading_id last_reading_id assigned_to at_micros made_by note event_key"),
    11: ("logbook_entry", "id machine kind roller state_before state_after note done_micros done_by"
         " corrects_id why withdraws at_micros made_by")}

def cell(value):
    if value is None: return b"n"
    if isinstance(value, int): return b"i" + struct.pack(">q", value)
    if isinstance(value, float): return b"r" + struct.pack(">d", value + 0.0)
    return b"t" + struct.pack(">i", len(value.encode())) + value.encode()

db, faults, sealed = sqlite3.connect(f"file:{sys.argv[1]}?mode=ro", uri=True), [], set()
rows, there = {}, {name for name, in db.execute("SELECT name FROM sqlite_schema")}
for code, (table, columns) in TABLES.items():
    if table not in there: continue  # an older database
    key = "job_id * 1000000 + revision" if code == 5 else "id"
    for row in db.execute(f"SELECT {key}, {columns.replace(' ', ', ')} FROM {table}"):
        rows[code, row[0]] = hashlib.sha256(b"".join(map(cell, row[1:]))).digest()
uuid = db.execute("SELECT uuid FROM identity").fetchone()[0]
seq, last = 0, hashlib.sha256(f"chordlog seal 1 {uuid}".encode()).digest()
for number, micros, body, given in db.execute("SELECT * FROM seal ORDER BY seq"):
    made = hashlib.sha256(last + struct.pack(">qq", number, micros) + body).digest()
    if number != seq + 1 or made != given: faults.append(f"entry {number} does not follow")
    for at in range(0, len(body), 41):
        code, key = struct.unpack(">bq", body[at:at + 9])
        sealed.add((code, key))
        if rows.get((code, key)) != body[at + 9:at + 41]:
            faults.append(f"{TABLES[code][0]} {key} was altered or removed")
    seq, last = number, given
faults += [f"{TABLES[code][0]} {key} was put in" for code, key in rows.keys() - sealed]
print("\n".join(faults) or f"all is well: {len(rows)} rows, newest entry {seq}:{last.hex()}")
sys.exit(1 if faults else 0)
