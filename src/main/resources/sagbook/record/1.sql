-- One bank's part of one check. Times are ISO 8601 in UTC, days are local.
CREATE TABLE bank_check (
  id INTEGER PRIMARY KEY,
  pack TEXT NOT NULL,
  timezone TEXT NOT NULL,
  chemistry TEXT NOT NULL,
  nominal_capacity_ah REAL NOT NULL,
  software TEXT NOT NULL,
  settings_sha256 TEXT NOT NULL,
  bank TEXT NOT NULL,
  from_time TEXT NOT NULL,
  to_time TEXT NOT NULL,
  headline TEXT NOT NULL,
  severity TEXT NOT NULL,
  log_rows INTEGER NOT NULL,
  cadence_s REAL,
  resistance_pulse_s REAL
);
CREATE INDEX bank_check_period ON bank_check (bank, from_time);
CREATE TABLE bank_estimate (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  quantity TEXT NOT NULL,
  value REAL,
  low REAL,
  high REAL,
  note TEXT,
  PRIMARY KEY (check_id, quantity)
);
CREATE TABLE bank_count (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  quantity TEXT NOT NULL,
  value REAL NOT NULL,
  PRIMARY KEY (check_id, quantity)
);
CREATE TABLE cell_finding (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  place_rank INTEGER NOT NULL,
  finding TEXT NOT NULL,
  action TEXT NOT NULL,
  PRIMARY KEY (check_id, cell)
);
CREATE TABLE cell_estimate (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  quantity TEXT NOT NULL,
  value REAL,
  low REAL,
  high REAL,
  note TEXT,
  PRIMARY KEY (check_id, cell, quantity)
);
CREATE TABLE cell_reading (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  quantity TEXT NOT NULL,
  value REAL NOT NULL,
  PRIMARY KEY (check_id, cell, quantity)
);
-- cell is 0 for what is said of the bank.
CREATE TABLE sentence (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  cell INTEGER NOT NULL,
  kind TEXT NOT NULL,
  place INTEGER NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY (check_id, cell, kind, place)
);
CREATE TABLE input_file (
  check_id INTEGER NOT NULL REFERENCES bank_check (id) ON DELETE CASCADE,
  place INTEGER NOT NULL,
  file TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  log_rows INTEGER NOT NULL,
  first_time TEXT NOT NULL,
  last_time TEXT NOT NULL,
  PRIMARY KEY (check_id, place)
);
CREATE INDEX input_file_sha256 ON input_file (sha256);
-- bank is empty for an event of the whole battery, cell is 0 for one that concerns no single cell.
CREATE TABLE diary_event (
  id INTEGER PRIMARY KEY,
  day TEXT NOT NULL,
  kind TEXT NOT NULL,
  bank TEXT NOT NULL,
  cell INTEGER NOT NULL,
  mark TEXT NOT NULL,
  text TEXT NOT NULL
);
