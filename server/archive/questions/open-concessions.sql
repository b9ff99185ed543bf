-- Concessions that hold now, and those that nobody has signed.
-- One that holds accepts a finding of its record as the record stands; one that accepts nothing any more is left out.
WITH held AS (
  SELECT
    findings.record AS record,
    findings.accepted_by AS name,
    COUNT(*) AS findings_accepted
  FROM findings
  WHERE findings.accepted
  GROUP BY findings.record, findings.accepted_by
)
SELECT
  concessions.record AS record,
  jobs.opened AS opened,
  concessions.entry AS concession,
  concessions.code AS code,
  concessions.on_entry AS on_entry,
  concessions.bound AS bound,
  concessions.bound_unit AS bound_unit,
  concessions.signed_by AS signed_by,
  concessions.signed_on AS signed_on,
  CASE WHEN held.findings_accepted > 0 THEN 'holds' ELSE 'unsigned' END AS standing,
  concessions.why AS why
FROM concessions
JOIN jobs ON jobs.record = concessions.record
LEFT JOIN held ON held.record = concessions.record AND held.name = concessions.name
WHERE held.findings_accepted > 0
  OR concessions.signed_by IS NULL
  OR concessions.signed_on IS NULL
ORDER BY record, concession
