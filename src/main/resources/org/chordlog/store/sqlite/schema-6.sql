-- What is told about alerts: deliveries to one recipient each, and the messages that they carry.
CREATE TABLE alert_delivery (
  id INTEGER PRIMARY KEY,
  channel TEXT NOT NULL,
  recipient TEXT NOT NULL,
  made_micros INTEGER NOT NULL,
  state TEXT NOT NULL,
  attempts INTEGER NOT NULL,
  progress_micros INTEGER NOT NULL,
  problem TEXT NOT NULL
) STRICT;
CREATE INDEX alert_delivery_due ON alert_delivery (state, channel, progress_micros);
CREATE INDEX alert_delivery_to ON alert_delivery (channel, recipient, progress_micros);

CREATE TABLE alert_message (
  id INTEGER PRIMARY KEY,
  channel TEXT NOT NULL,
  recipient TEXT NOT NULL,
  topic TEXT NOT NULL,
  number INTEGER NOT NULL,
  alert_id INTEGER NOT NULL,
  at_micros INTEGER NOT NULL,
  delivery_id INTEGER REFERENCES alert_delivery,
  UNIQUE (topic, number, channel, recipient)
) STRICT;
CREATE INDEX alert_message_unsent ON alert_message (channel, recipient, id) WHERE delivery_id IS NULL;
CREATE INDEX alert_message_of_delivery ON alert_message (delivery_id);
