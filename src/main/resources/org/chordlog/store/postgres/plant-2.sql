-- Requests to the plant itself that changed something and carried a key, as in the database of a
-- workshop computer.
CREATE TABLE plant.answered_request (
  edge_id uuid NOT NULL DEFAULT plant.current_edge(),
  incarnation int NOT NULL DEFAULT plant.current_incarnation(),
  request_key text COLLATE "C" NOT NULL,
  request text COLLATE "C" NOT NULL,
  at_micros bigint NOT NULL,
  status int,
  media_type text COLLATE "C",
  body bytea,
  PRIMARY KEY (edge_id, incarnation, request_key)
);
CREATE INDEX answered_request_by_time ON plant.answered_request (edge_id, incarnation, at_micros);

CREATE VIEW edge.answered_request WITH (security_invoker = true) AS SELECT
  r.request_key, r.request, r.at_micros, r.status, r.media_type, r.body
FROM plant.answered_request r
WHERE r.edge_id = plant.current_edge()
  AND r.incarnation = (SELECT plant.current_incarnation());

GRANT SELECT, INSERT, UPDATE, DELETE ON edge.answered_request TO chordlog_plant;
GRANT SELECT, INSERT, UPDATE, DELETE ON plant.answered_request TO chordlog_plant;
ALTER TABLE plant.answered_request ENABLE ROW LEVEL SECURITY;
CREATE POLICY plant_reads ON plant.answered_request FOR SELECT TO chordlog_plant USING (true);
-- As of checkpoints, which the plant writes for every edge: a request may bring that about.
CREATE POLICY plant_writes ON plant.answered_request TO chordlog_plant USING (true) WITH CHECK (true);
